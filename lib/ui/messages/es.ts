import { changeover } from '@/lib/ui/messages/es/changeover';
import { clock } from '@/lib/ui/messages/es/clock';
import { counts } from '@/lib/ui/messages/es/counts';
import { events } from '@/lib/ui/messages/es/events';
import { holds } from '@/lib/ui/messages/es/holds';
import { items } from '@/lib/ui/messages/es/items';
import { labels } from '@/lib/ui/messages/es/labels';
import { notPermitted } from '@/lib/ui/messages/es/not-permitted';
import { offline } from '@/lib/ui/messages/es/offline';
import { pack } from '@/lib/ui/messages/es/pack';
import { plantLabels } from '@/lib/ui/messages/es/plant-labels';
import { record } from '@/lib/ui/messages/es/record';
import { refusals } from '@/lib/ui/messages/es/refusals';
import { returns } from '@/lib/ui/messages/es/returns';
import { scanBox } from '@/lib/ui/messages/es/scan-box';
import { scanning } from '@/lib/ui/messages/es/scanning';
import { shell } from '@/lib/ui/messages/es/shell';
import { signIn } from '@/lib/ui/messages/es/sign-in';
import { station } from '@/lib/ui/messages/es/station';
import { tags } from '@/lib/ui/messages/es/tags';
import { time } from '@/lib/ui/messages/es/time';
import { trust } from '@/lib/ui/messages/es/trust';
import { verdict } from '@/lib/ui/messages/es/verdict';
import { wrong } from '@/lib/ui/messages/es/wrong';
import type { OperatorWords } from '@/lib/ui/messages/operator-words';

/** What an operator reads, in Spanish. */
export const es: OperatorWords = {
  changeover,
  clock,
  counts,
  events,
  holds,
  items,
  labels,
  notPermitted,
  offline,
  pack,
  plantLabels,
  record,
  refusals,
  returns,
  scanBox,
  scanning,
  shell,
  signIn,
  station,
  tags,
  time,
  trust,
  verdict,
  wrong,
};
