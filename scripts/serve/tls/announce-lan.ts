import { toString as qrCode } from 'qrcode';

/** The lines by which a tablet finds its way: an address as text and as a code, and the fingerprint to compare. */
export async function lanAnnouncement(origin: string, fingerprint: string): Promise<string> {
  const address = `${origin.replace(/^https:/, 'http:')}/trust`;
  return [
    `On a tablet, scan this or open ${address}`,
    await qrCode(address, { type: 'terminal', small: true }),
    'The tablet must show the same fingerprint of this server’s certificate authority (SHA-256):',
    ...(fingerprint.match(/.{1,48}/g) ?? []).map((part) => `  ${part}`),
  ].join('\n');
}
