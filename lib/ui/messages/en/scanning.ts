/** Words of scanning: what could not be read, the camera, and how the scanner of a device types. */
export const scanning = {
  remark: {
    separators_lost:
      'Not read: this label needs separators, and the scanner leaves them out. Set the scanner up to send GS (as Ctrl+], for example), or use the camera.',
    separator_lost:
      'Read by the serial pattern: the scanner left a separator out. Set it up to send GS (as Ctrl+], for example).',
    no_code: 'Not read: the label names no package, serial, lot or part. Scan another label of it.',
    unreadable: 'Not read: the scan has characters that no code has. Scan it again.',
  },
  camera: {
    title: 'Camera',
    open: 'Scan with the camera',
    close: 'Close the camera',
    aim: 'Hold the code into the frame',
    light: 'Light on',
    dark: 'Light off',
    trouble: {
      insecure:
        'The browser gives the camera to https addresses only. Open this page with https, or use a scanner.',
      forbidden:
        'The camera is not allowed. Allow it for this page in the browser’s settings, then open it again.',
      missing: 'This device has no camera. Use a scanner, or type the code.',
      busy: 'The camera does not start. Another program may be using it; close that one and try again.',
    },
  },
  device: {
    title: 'This device',
    text: 'What is set here is kept by this device alone.',
    language: 'Language',
    languageText: 'Every screen of this device is shown in it.',
  },
  settings: {
    title: 'How the scanner types',
    prefix: 'Typed in front of every code (taken away)',
    suffix: 'What ends a scan',
    suffixes: { Enter: 'Enter', Tab: 'Tab', pause: 'Nothing: a short pause' },
    gap: 'Longest time between two characters, in milliseconds',
    gapHint: '20 to 150. Higher for a slow wireless scanner; too high takes quick typing for a scan.',
    save: 'Save',
    saved: 'Saved on this device.',
    bad: 'Between 20 and 150.',
    try: 'Scan something to try it',
    got: 'Code: {code}',
    facts: {
      packageId: 'Package',
      serial: 'Serial',
      lot: 'Lot',
      part: 'Part',
      quantity: 'Quantity',
      supplier: 'Supplier',
    },
  },
} as const;
