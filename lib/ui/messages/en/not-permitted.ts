/** Words of the page for a role that may not open a screen. */
export const notPermitted = {
  title: 'Your role may not open this',
  text: 'You are signed in as {badge}, {role}. Someone with another role can do this, or an administrator can change yours.',
  home: 'Back to the start',
} as const;
