/** Words about events that are kept on a device until the server has them. */
export const record = {
  sending: 'Sending {count, plural, one {one entry} other {# entries}}…',
  retrying:
    'The server does not answer. {count, plural, one {One entry is} other {# entries are}} kept on this device and sent again.',
  signed_out:
    'Your session has ended. {count, plural, =0 {} one {One entry is kept on this device. } other {# entries are kept on this device. }}Sign in to go on.',
  clock_ahead:
    'The clock of this device is ahead. {count, plural, one {One entry waits} other {# entries wait}}: set the clock.',
  contact: {
    online: 'Server answers',
    offline: 'No server',
    waiting:
      '{count, plural, =0 {nothing waits here} one {one entry waits here} other {# entries wait here}}',
    last: 'last contact {clock}',
    never: 'no contact yet',
  },
  update: {
    text: 'A new version is ready. Nothing that is recorded here is lost by it.',
    take: 'Use it now',
  },
  signIn: 'Sign in',
  sendNow: 'Send now',
  sendingOne: 'Recording…',
  countDoubt: {
    ask: 'More than the {known, number} it had. Is it right?',
    save: 'Yes, save {quantity, number}',
  },
  fault: {
    empty: 'This is needed.',
    invalid_type: 'This is needed.',
    invalid_value: 'Choose one of the list.',
    not_a_number: 'This is not a number.',
    too_small: 'This is too small.',
    too_big: 'This is too large.',
    too_long: 'This is too long.',
    unprintable: 'This has characters that cannot be printed.',
    space_at_end: 'This begins or ends with a space.',
    no_condition: 'It does not say what to look for: give one more fact, such as a code.',
    no_must: 'At least one condition must say what the units have in common.',
    no_station_there: 'A station goes with the place At a station only.',
    not_a_span: 'The time must end after it begins, and be of 31 days at most.',
    not_a_time: 'This is not a time with an offset from UTC.',
    unknown_key: 'Nothing can be asked by this name.',
    until_before_since: 'The second moment must come after the first.',
    other: 'This is not accepted.',
  },
  trouble: {
    unreachable: 'The server does not answer.',
    signed_out: 'Your session has ended.',
    not_permitted: 'Your role may not see this.',
    not_found: 'There is no such thing here.',
  },
  tryAgain: 'Try again',
  loading: 'Loading…',
  problem: {
    title: 'Not recorded: {what}',
    titleOf: 'Not recorded: {what}, {subject}',
    understood: 'Understood',
  },
} as const;
