/** Words of the screen that makes the first administrator. */
export const setup = {
  title: 'The first administrator',
  hint: 'This link works once. The administrator gives everyone else their badge, role and PIN.',
  badge: 'Badge',
  badgeHint: 'As it is printed or coded on the badge, for example op-101.',
  name: 'Name',
  password: 'Password',
  passwordHint: 'At least 12 characters, for a desk.',
  pin: 'PIN',
  pinHint: 'Four to eight digits, for a station.',
  submit: 'Make administrator',
  closed: {
    title: 'This link does not work',
    text: 'It was used, is older than a day, or a newer one was printed. Restarting the server prints a new one while there is no administrator.',
    signIn: 'Go to sign in',
  },
} as const;
