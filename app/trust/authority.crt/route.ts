import { readAuthority } from '@/lib/server/read-authority';

/** The certificate authority as a file; this type makes a tablet offer to install it. */
export async function GET(): Promise<Response> {
  const authority = await readAuthority();
  if (authority === null) return new Response(null, { status: 404 });
  return new Response(authority.pem, {
    headers: {
      'content-type': 'application/x-x509-ca-cert',
      'content-disposition': 'attachment; filename="reelkin-authority.crt"',
      'cache-control': 'no-store',
    },
  });
}
