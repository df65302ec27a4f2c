/** One word for each state, the same on every screen. */
export const tags = {
  place: {
    station: 'At a station',
    stock: 'In stock',
    container: 'Packed',
    shipped: 'Shipped',
    returned: 'Returned',
    scrapped: 'Scrapped',
    unknown: 'Not placed',
  },
  relation: { contains: 'Contains', formerly: 'Formerly', touched: 'Touched' },
  certainty: { certain: 'Certain', possible: 'Possible' },
  hold: { open: 'On hold', released: 'Released' },
  result: { pass: 'Pass', fail: 'Fail' },
  itemKind: {
    reel: 'Reel',
    lot: 'Lot',
    paste: 'Paste',
    stencil: 'Stencil',
    squeegee: 'Squeegee',
    carrier: 'Carrier',
    profile: 'Profile',
    firmware: 'Firmware',
    fixture: 'Fixture',
  },
  labelKind: { unit: 'Unit', item: 'Item', container: 'Container', badge: 'Badge' },
  holdTarget: { unit: 'Unit', item: 'Item', lot: 'Lot', container: 'Container' },
} as const;
