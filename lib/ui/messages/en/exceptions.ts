/** Words of the screen of exceptions. */
export const exceptions = {
  title: 'Exceptions',
  summary:
    '{total, plural, =0 {Nothing is open} one {One event broke a rule and waits for QA} other {# events broke a rule and wait for QA}}',
  shown: 'Shown are the first {count, number} that came.',
  hint: 'It happened although a rule spoke against it: without the server, or at a machine that only reports. It is recorded, and it holds its unit until somebody releases the hold, QA clears it here, or the missing event comes that puts it right.',
  holds: 'Holds its unit',
  released: 'Hold released',
  arrived: 'arrived',
  columns: {
    what: 'What happened',
    broken: 'Rule that it broke',
    where: 'Where and by whom',
    when: 'Happened',
    cleared: 'Cleared',
    actions: 'Decide',
  },
  device: 'device {device}',
  cleared: 'Cleared last',
  clearedBy: '{by}: {reason}',
  clear: {
    label: 'Clear',
    labelOf: 'Clear {subject}: {event}',
    title: 'Clear this exception?',
    text: 'The event stays as it is, with what was wrong with it. The hold that it caused ends; other holds stay. Say what you found.',
    confirm: 'Clear it',
  },
  reopen: {
    label: 'Open again',
    labelOf: 'Open again {subject}: {event}',
    title: 'Open this exception again?',
    text: 'This voids the clearing. The hold that it ended holds again.',
    confirm: 'Open it again',
  },
} as const;
