import { indexPlant, type Plant } from '@/lib/domain/plant/plant';
import { Store } from '@/scripts/demo/material/store';
import { demoPlant } from '@/scripts/demo/plant/demo-plant';
import { DEVICES } from '@/scripts/demo/plant/stations';
import { Agenda } from '@/scripts/demo/simulation/agenda';
import { type Calendar, demoCalendar } from '@/scripts/demo/simulation/calendar';
import { Journal } from '@/scripts/demo/simulation/journal';
import { type Random, randomFrom } from '@/scripts/demo/simulation/random';
import { Roster } from '@/scripts/demo/simulation/roster';
import type { DemoUnit } from '@/scripts/demo/simulation/unit';

/** The simulated plant: what everything in it shares. */
export type World = {
  agenda: Agenda;
  calendar: Calendar;
  journal: Journal;
  random: Random;
  plant: Plant;
  roster: Roster;
  store: Store;
  /** Every unit that was started, in order. */
  units: DemoUnit[];
  /** Stations where changes are scanned with a tablet whose clock is in doubt. */
  doubtfulClocks: Set<string>;
};

/** An empty plant on the first of the three weeks that end on a day (`2026-03-20`). */
export function openWorld(options: { endsAt: string; seed: number }): World {
  const calendar = demoCalendar(options.endsAt);
  const agenda = new Agenda(calendar.firstMs);
  const journal = new Journal({
    agenda,
    calendar,
    random: randomFrom(options.seed ^ 0x5eed),
    devices: DEVICES,
  });
  const random = randomFrom(options.seed);
  const plant = indexPlant(demoPlant());
  const roster = new Roster({ agenda, calendar, plant });
  const store = new Store({ journal, random, roster });
  return { agenda, calendar, journal, random, plant, roster, store, units: [], doubtfulClocks: new Set() };
}
