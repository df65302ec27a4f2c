import type { Translation } from '@/lib/ui/messages/translation';
import { changeover } from '@/lib/ui/messages/zh-hant/changeover';
import { clock } from '@/lib/ui/messages/zh-hant/clock';
import { counts } from '@/lib/ui/messages/zh-hant/counts';
import { desk } from '@/lib/ui/messages/zh-hant/desk';
import { devices } from '@/lib/ui/messages/zh-hant/devices';
import { difference } from '@/lib/ui/messages/zh-hant/difference';
import { eventFacts } from '@/lib/ui/messages/zh-hant/event-facts';
import { events } from '@/lib/ui/messages/zh-hant/events';
import { exceptions } from '@/lib/ui/messages/zh-hant/exceptions';
import { floor } from '@/lib/ui/messages/zh-hant/floor';
import { floorUnits } from '@/lib/ui/messages/zh-hant/floor-units';
import { genealogy } from '@/lib/ui/messages/zh-hant/genealogy';
import { holds } from '@/lib/ui/messages/zh-hant/holds';
import { item } from '@/lib/ui/messages/zh-hant/item';
import { items } from '@/lib/ui/messages/zh-hant/items';
import { labels } from '@/lib/ui/messages/zh-hant/labels';
import { narrow } from '@/lib/ui/messages/zh-hant/narrow';
import { notPermitted } from '@/lib/ui/messages/zh-hant/not-permitted';
import { offline } from '@/lib/ui/messages/zh-hant/offline';
import { pack } from '@/lib/ui/messages/zh-hant/pack';
import { packing } from '@/lib/ui/messages/zh-hant/packing';
import { people } from '@/lib/ui/messages/zh-hant/people';
import { plant } from '@/lib/ui/messages/zh-hant/plant';
import { plantLabels } from '@/lib/ui/messages/zh-hant/plant-labels';
import { record } from '@/lib/ui/messages/zh-hant/record';
import { refusals } from '@/lib/ui/messages/zh-hant/refusals';
import { returns } from '@/lib/ui/messages/zh-hant/returns';
import { scanBox } from '@/lib/ui/messages/zh-hant/scan-box';
import { scanning } from '@/lib/ui/messages/zh-hant/scanning';
import { setup } from '@/lib/ui/messages/zh-hant/setup';
import { shell } from '@/lib/ui/messages/zh-hant/shell';
import { signIn } from '@/lib/ui/messages/zh-hant/sign-in';
import { slotTimeline } from '@/lib/ui/messages/zh-hant/slot-timeline';
import { station } from '@/lib/ui/messages/zh-hant/station';
import { tags } from '@/lib/ui/messages/zh-hant/tags';
import { time } from '@/lib/ui/messages/zh-hant/time';
import { trace } from '@/lib/ui/messages/zh-hant/trace';
import { trust } from '@/lib/ui/messages/zh-hant/trust';
import { unit } from '@/lib/ui/messages/zh-hant/unit';
import { verdict } from '@/lib/ui/messages/zh-hant/verdict';
import { wrong } from '@/lib/ui/messages/zh-hant/wrong';

/** Every text that a person reads, in Traditional Chinese, as electronics floors in Taiwan say it. */
export const zhHant: Translation = {
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
