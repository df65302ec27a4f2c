/** Words about the clock of a device. */
export const clock = {
  no_contact:
    'This device has not reached the server yet, so it does not know how wrong its clock is. What is recorded now is marked with the widest doubt about its time.',
  set: 'The clock of this device was set {way, select, back {back} other {forward}} by {by} while the server was out of reach. {isWide, select, yes {When things happen cannot be said until the server answers again.} other {Times recorded now are right to within {doubt}.}}',
  doubtful:
    '{isWide, select, yes {When things happen cannot be said until the server answers again: the clock of this device was set back while no one looked.} other {Times recorded now are right only to within {doubt}, until the server answers again.}}',
  wrong:
    'The clock of this device is {by} {way, select, back {behind} other {ahead}}. What is recorded has the right time all the same.',
} as const;
