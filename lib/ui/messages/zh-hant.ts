import type { OperatorWords } from '@/lib/ui/messages/operator-words';
import { changeover } from '@/lib/ui/messages/zh-hant/changeover';
import { clock } from '@/lib/ui/messages/zh-hant/clock';
import { counts } from '@/lib/ui/messages/zh-hant/counts';
import { events } from '@/lib/ui/messages/zh-hant/events';
import { holds } from '@/lib/ui/messages/zh-hant/holds';
import { items } from '@/lib/ui/messages/zh-hant/items';
import { labels } from '@/lib/ui/messages/zh-hant/labels';
import { notPermitted } from '@/lib/ui/messages/zh-hant/not-permitted';
import { offline } from '@/lib/ui/messages/zh-hant/offline';
import { pack } from '@/lib/ui/messages/zh-hant/pack';
import { plantLabels } from '@/lib/ui/messages/zh-hant/plant-labels';
import { record } from '@/lib/ui/messages/zh-hant/record';
import { refusals } from '@/lib/ui/messages/zh-hant/refusals';
import { returns } from '@/lib/ui/messages/zh-hant/returns';
import { scanBox } from '@/lib/ui/messages/zh-hant/scan-box';
import { scanning } from '@/lib/ui/messages/zh-hant/scanning';
import { shell } from '@/lib/ui/messages/zh-hant/shell';
import { signIn } from '@/lib/ui/messages/zh-hant/sign-in';
import { station } from '@/lib/ui/messages/zh-hant/station';
import { tags } from '@/lib/ui/messages/zh-hant/tags';
import { time } from '@/lib/ui/messages/zh-hant/time';
import { trust } from '@/lib/ui/messages/zh-hant/trust';
import { verdict } from '@/lib/ui/messages/zh-hant/verdict';
import { wrong } from '@/lib/ui/messages/zh-hant/wrong';

/** What an operator reads, in Traditional Chinese, as electronics floors in Taiwan say it. */
export const zhHant: OperatorWords = {
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
