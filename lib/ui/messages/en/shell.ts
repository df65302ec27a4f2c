/** Words of the frame around every screen. */
export const shell = {
  demo: 'Demo · an invented plant; nothing here is real',
  demoLabel: 'Demo',
  skip: 'Skip to the content',
  navigation: 'Screens',
  menu: { open: 'Open the menu', close: 'Close the menu' },
  screens: {
    floor: 'Floor',
    station: 'Station',
    changeover: 'Changeover',
    items: 'Goods-in',
    pack: 'Pack & ship',
    holds: 'Holds',
    devices: 'Devices',
    returns: 'Returns',
    trace: 'Trace',
    plant: 'Plant',
    people: 'People',
  },
  signedInAs: 'Signed in as {badge}, {role}',
  thisDevice: 'This device: scanner and language',
  scheme: { label: 'Colours', light: 'Light', dark: 'Dark', auto: 'As the device' },
} as const;
