import { headers } from 'next/headers';
import { notFound } from 'next/navigation';
import { pageTitle } from '@/app/page-words';
import { readAuthority } from '@/lib/server/read-authority';
import { TrustPage } from '@/lib/ui/trust/trust-page';

export const generateMetadata = pageTitle(({ trust }) => trust.title);

/** Before anyone can sign in: how a tablet comes to trust this server. It tells nothing that is not public. */
export default async function TrustRoute() {
  const authority = await readAuthority();
  if (authority === null) notFound();
  const { fingerprint, endsAt } = authority;
  const host = (await headers()).get('host') ?? '';
  return <TrustPage fingerprint={fingerprint} endsAt={endsAt} address={`https://${host}/`} />;
}
