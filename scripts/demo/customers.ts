/** Somebody who buys the WX4. */
export type Customer = {
  name: string;
  destination: string;
  /** Units in one of this customer's cartons. */
  cartonSize: number;
  /** Cartons on one of this customer's pallets. */
  palletSize: number;
};

/** The customers of the demo; all invented. */
export const CUSTOMERS: readonly Customer[] = [
  { name: 'Northgate Rail', destination: 'United Kingdom', cartonSize: 16, palletSize: 6 },
  { name: 'Halden Water', destination: 'Norway', cartonSize: 12, palletSize: 6 },
  { name: 'Corriemoor Wind', destination: 'Ireland', cartonSize: 10, palletSize: 6 },
  { name: 'Ostermoor Agrar', destination: 'Germany', cartonSize: 20, palletSize: 4 },
  { name: 'Valdesole Strade', destination: 'Italy', cartonSize: 16, palletSize: 4 },
  { name: 'Pellworth Harbour', destination: 'Canada', cartonSize: 12, palletSize: 4 },
];
