import { changeover } from '@/lib/ui/messages/es/changeover';
import { clock } from '@/lib/ui/messages/es/clock';
import { counts } from '@/lib/ui/messages/es/counts';
import { desk } from '@/lib/ui/messages/es/desk';
import { devices } from '@/lib/ui/messages/es/devices';
import { difference } from '@/lib/ui/messages/es/difference';
import { eventFacts } from '@/lib/ui/messages/es/event-facts';
import { events } from '@/lib/ui/messages/es/events';
import { exceptions } from '@/lib/ui/messages/es/exceptions';
import { floor } from '@/lib/ui/messages/es/floor';
import { floorUnits } from '@/lib/ui/messages/es/floor-units';
import { genealogy } from '@/lib/ui/messages/es/genealogy';
import { holds } from '@/lib/ui/messages/es/holds';
import { item } from '@/lib/ui/messages/es/item';
import { items } from '@/lib/ui/messages/es/items';
import { labels } from '@/lib/ui/messages/es/labels';
import { narrow } from '@/lib/ui/messages/es/narrow';
import { notPermitted } from '@/lib/ui/messages/es/not-permitted';
import { offline } from '@/lib/ui/messages/es/offline';
import { pack } from '@/lib/ui/messages/es/pack';
import { packing } from '@/lib/ui/messages/es/packing';
import { people } from '@/lib/ui/messages/es/people';
import { plant } from '@/lib/ui/messages/es/plant';
import { plantLabels } from '@/lib/ui/messages/es/plant-labels';
import { record } from '@/lib/ui/messages/es/record';
import { refusals } from '@/lib/ui/messages/es/refusals';
import { returns } from '@/lib/ui/messages/es/returns';
import { scanBox } from '@/lib/ui/messages/es/scan-box';
import { scanning } from '@/lib/ui/messages/es/scanning';
import { setup } from '@/lib/ui/messages/es/setup';
import { shell } from '@/lib/ui/messages/es/shell';
import { signIn } from '@/lib/ui/messages/es/sign-in';
import { slotTimeline } from '@/lib/ui/messages/es/slot-timeline';
import { station } from '@/lib/ui/messages/es/station';
import { tags } from '@/lib/ui/messages/es/tags';
import { time } from '@/lib/ui/messages/es/time';
import { trace } from '@/lib/ui/messages/es/trace';
import { trust } from '@/lib/ui/messages/es/trust';
import { unit } from '@/lib/ui/messages/es/unit';
import { verdict } from '@/lib/ui/messages/es/verdict';
import { wrong } from '@/lib/ui/messages/es/wrong';
import type { Translation } from '@/lib/ui/messages/translation';

/** Every text that a person reads, in Spanish. */
export const es: Translation = {
  app: { name: 'Reelkin' },
  changeover,
  clock,
  counts,
  desk,
  devices,
  difference,
  eventFacts,
  events,
  exceptions,
  floor,
  floorUnits,
  genealogy,
  holds,
  item,
  items,
  labels,
  narrow,
  notPermitted,
  offline,
  pack,
  packing,
  people,
  plant,
  plantLabels,
  record,
  refusals,
  returns,
  scanBox,
  scanning,
  setup,
  shell,
  signIn,
  slotTimeline,
  station,
  tags,
  time,
  trace,
  trust,
  unit,
  verdict,
  wrong,
};
