import { changeover } from '@/lib/ui/messages/en/changeover';
import { clock } from '@/lib/ui/messages/en/clock';
import { counts } from '@/lib/ui/messages/en/counts';
import { desk } from '@/lib/ui/messages/en/desk';
import { devices } from '@/lib/ui/messages/en/devices';
import { difference } from '@/lib/ui/messages/en/difference';
import { eventFacts } from '@/lib/ui/messages/en/event-facts';
import { events } from '@/lib/ui/messages/en/events';
import { exceptions } from '@/lib/ui/messages/en/exceptions';
import { floor } from '@/lib/ui/messages/en/floor';
import { floorUnits } from '@/lib/ui/messages/en/floor-units';
import { genealogy } from '@/lib/ui/messages/en/genealogy';
import { holds } from '@/lib/ui/messages/en/holds';
import { item } from '@/lib/ui/messages/en/item';
import { items } from '@/lib/ui/messages/en/items';
import { labels } from '@/lib/ui/messages/en/labels';
import { narrow } from '@/lib/ui/messages/en/narrow';
import { notPermitted } from '@/lib/ui/messages/en/not-permitted';
import { offline } from '@/lib/ui/messages/en/offline';
import { pack } from '@/lib/ui/messages/en/pack';
import { packing } from '@/lib/ui/messages/en/packing';
import { people } from '@/lib/ui/messages/en/people';
import { plant } from '@/lib/ui/messages/en/plant';
import { plantLabels } from '@/lib/ui/messages/en/plant-labels';
import { record } from '@/lib/ui/messages/en/record';
import { refusals } from '@/lib/ui/messages/en/refusals';
import { returns } from '@/lib/ui/messages/en/returns';
import { scanBox } from '@/lib/ui/messages/en/scan-box';
import { scanning } from '@/lib/ui/messages/en/scanning';
import { setup } from '@/lib/ui/messages/en/setup';
import { shell } from '@/lib/ui/messages/en/shell';
import { signIn } from '@/lib/ui/messages/en/sign-in';
import { slotTimeline } from '@/lib/ui/messages/en/slot-timeline';
import { station } from '@/lib/ui/messages/en/station';
import { tags } from '@/lib/ui/messages/en/tags';
import { time } from '@/lib/ui/messages/en/time';
import { trace } from '@/lib/ui/messages/en/trace';
import { trust } from '@/lib/ui/messages/en/trust';
import { unit } from '@/lib/ui/messages/en/unit';
import { verdict } from '@/lib/ui/messages/en/verdict';
import { wrong } from '@/lib/ui/messages/en/wrong';

/** Every text that a person reads, in English; ICU message format, nested by screen. */
export const en = {
  app: { name: 'Reelkin' },
  shell,
  tags,
  events,
  refusals,
  verdict,
  scanBox,
  scanning,
  labels,
  signIn,
  setup,
  people,
  notPermitted,
  time,
  floor,
  floorUnits,
  trace,
  narrow,
  trust,
  changeover,
  counts,
  clock,
  holds,
  items,
  offline,
  plantLabels,
  pack,
  record,
  returns,
  station,
  desk,
  devices,
  difference,
  eventFacts,
  exceptions,
  unit,
  item,
  packing,
  genealogy,
  slotTimeline,
  plant,
  wrong,
} as const;
