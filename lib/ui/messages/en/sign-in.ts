/** Words of the sign-in screen. */
export const signIn = {
  title: 'Sign in',
  station: {
    title: 'At a station',
    hint: 'Scan or type your badge, then type your PIN.',
    submit: 'Sign in with PIN',
  },
  desk: {
    title: 'At a desk',
    hint: 'For planning, quality and administration.',
    submit: 'Sign in with password',
  },
  badge: 'Badge',
  pin: 'PIN',
  password: 'Password',
  showPassword: 'Show or hide what was typed',
  keypad: {
    label: 'Number keys for the PIN',
    erase: 'Erase the last digit',
    clear: 'Clear',
    key: 'Digit {digit}',
  },
  refused: {
    wrong_credentials: 'Badge and PIN or password do not go together. Try again, or ask an administrator.',
    unknown_here:
      'Without the server this tablet knows only people who signed in on it with their PIN in the last two weeks.',
    too_many_attempts:
      'Too many wrong attempts. Try again in {minutes, plural, one {one minute} other {# minutes}}.',
  },
  signOut: 'Sign out',
} as const;
