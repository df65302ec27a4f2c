import type { Metadata } from 'next';
import { createTranslator } from 'use-intl';
import { changePersonAt } from '@/app/station/actions';
import { nameOf } from '@/lib/server/name-of';
import { returnPath } from '@/lib/server/people/return-path';
import { requirePrincipal } from '@/lib/server/require-principal';
import { en } from '@/lib/ui/messages/en';
import { ReturnsApp } from '@/lib/ui/returns/returns-app';
import { addressCode } from '@/lib/ui/shop/address-code';

const t = createTranslator({ locale: 'en', messages: en, namespace: 'returns' });

export const metadata: Metadata = { title: t('title') };

/** Where units that came back from customers are received. */
export default async function ReturnsPage({ searchParams }: { searchParams: Promise<{ code?: unknown }> }) {
  const search = await searchParams;
  const person = await requirePrincipal('screen:returns', { returnTo: returnPath('/returns', search) });
  const { code } = search;
  return (
    <ReturnsApp
      person={person}
      name={await nameOf(person.badge)}
      changePerson={changePersonAt.bind(null, '/returns')}
      firstScan={addressCode(code)}
    />
  );
}
