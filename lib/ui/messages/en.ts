import { notPermitted } from '@/lib/ui/messages/en/not-permitted';
import { people } from '@/lib/ui/messages/en/people';
import { setup } from '@/lib/ui/messages/en/setup';
import { signIn } from '@/lib/ui/messages/en/sign-in';

/** Every text that a person reads, in English; ICU message format, nested by screen. */
export const en = { app: { name: 'Reelkin' }, signIn, setup, people, notPermitted } as const;
