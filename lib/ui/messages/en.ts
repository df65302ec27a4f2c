import { desk } from '@/lib/ui/messages/en/desk';
import { eventFacts } from '@/lib/ui/messages/en/event-facts';
import { events } from '@/lib/ui/messages/en/events';
import { floor } from '@/lib/ui/messages/en/floor';
import { item } from '@/lib/ui/messages/en/item';
import { notPermitted } from '@/lib/ui/messages/en/not-permitted';
import { packing } from '@/lib/ui/messages/en/packing';
import { people } from '@/lib/ui/messages/en/people';
import { refusals } from '@/lib/ui/messages/en/refusals';
import { scanBox } from '@/lib/ui/messages/en/scan-box';
import { setup } from '@/lib/ui/messages/en/setup';
import { shell } from '@/lib/ui/messages/en/shell';
import { signIn } from '@/lib/ui/messages/en/sign-in';
import { tags } from '@/lib/ui/messages/en/tags';
import { time } from '@/lib/ui/messages/en/time';
import { trace } from '@/lib/ui/messages/en/trace';
import { unit } from '@/lib/ui/messages/en/unit';
import { verdict } from '@/lib/ui/messages/en/verdict';

/** Every text that a person reads, in English; ICU message format, nested by screen. */
export const en = {
  app: { name: 'Reelkin' },
  shell,
  tags,
  events,
  refusals,
  verdict,
  scanBox,
  signIn,
  setup,
  people,
  notPermitted,
  time,
  floor,
  trace,
  desk,
  eventFacts,
  unit,
  item,
  packing,
} as const;
