import type { Role } from '@/lib/domain/people/roles';

/** Somebody who works at the demo's plant; PIN and password are printed for all to see. */
export type DemoPerson = {
  badge: string;
  name: string;
  role: Role;
  /** What the person is qualified for. */
  operations: readonly string[];
  pin: string;
  /** Only people who sign in at a desktop have one; at least 12 characters. */
  password: string | null;
};

const PLACEMENT = ['mark', 'print', 'spi', 'place-1', 'place-2', 'reflow', 'aoi'];

function operator(badge: string, name: string, operations: readonly string[]): DemoPerson {
  return { badge, name, role: 'operator', operations, pin: `4${badge.slice(-3)}`, password: null };
}

function desk(badge: string, name: string, role: Role, operations: readonly string[] = []): DemoPerson {
  return { badge, name, role, operations, pin: `4${badge.slice(-3)}`, password: `tarn-valley-${badge}` };
}

/** The people of Tarn Valley Electronics; all invented. */
export const DEMO_PEOPLE: readonly DemoPerson[] = [
  operator('op-111', 'Imogen Hartnell', PLACEMENT),
  operator('op-112', 'Tobiasz Wilk', PLACEMENT),
  operator('op-114', 'Maren Oakes', PLACEMENT),
  operator('op-115', 'Dilip Ranasinghe', PLACEMENT),
  operator('op-121', 'Aoife Tierney', ['xray', 'inspection']),
  operator('op-122', 'Gethin Prosser', ['insertion', 'wave']),
  operator('op-123', 'Wanjiru Kamathi', ['insertion', 'wave']),
  operator('op-124', 'Pavel Horsky', ['insertion', 'wave', 'inspection']),
  operator('op-125', 'Siân Mortlake', ['inspection', 'repair', 'aoi']),
  operator('op-126', 'Ravindra Iyengar', ['repair', 'inspection']),
  operator('op-131', 'Bettina Kraushaar', ['assembly']),
  operator('op-132', 'Calum Drever', ['assembly', 'insertion']),
  operator('op-141', 'Yusuf Adeyinka', ['function-test', 'psu-test', 'firmware', 'chamber']),
  operator('op-142', 'Linnea Fagerholt', ['function-test', 'psu-test', 'firmware', 'chamber']),
  operator('op-143', 'Emrys Callow', ['function-test', 'psu-test', 'chamber']),
  { ...desk('mh-201', 'Noor Shaheen', 'handler'), password: null },
  { ...desk('mh-202', 'Piotr Lasek', 'handler'), password: null },
  desk('qa-301', 'Harriet Quayle', 'qa', ['inspection', 'xray', 'function-test']),
  desk('qa-302', 'Joaquim Teles', 'qa', ['inspection', 'xray']),
  { ...desk('pk-401', 'Delyth Anwyl', 'packer'), password: null },
  { ...desk('pk-402', 'Oskar Brandvold', 'packer'), password: null },
  desk('en-501', 'Priya Venkataraman', 'engineer', ['function-test', 'aoi', 'xray']),
  desk('ad-601', 'Morwenna Teague', 'admin'),
];
