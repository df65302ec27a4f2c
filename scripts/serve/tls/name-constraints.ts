import { isIPv6 } from 'node:net';
import { PRIVATE_RANGES } from './lan-names';

/** Object identifier of the extension. */
export const NAME_CONSTRAINTS = '2.5.29.30';

const SEQUENCE = 0x30;
const PERMITTED = 0xa0;
const DNS_NAME = 0x82;
const IP_ADDRESS = 0x87;

/**
 * Name constraints (RFC 5280, section 4.2.1.10) that keep an authority inside the plant: private addresses, the given
 * host names and whatever is below them. Whoever steals its key can imitate nothing else to the tablets that trust it.
 */
export function privateNameConstraints(hosts: readonly string[]): Uint8Array<ArrayBuffer> {
  const names = hosts.map((host) => element(DNS_NAME, Buffer.from(host, 'ascii')));
  const ranges = PRIVATE_RANGES.map(([address, prefix]) =>
    element(IP_ADDRESS, Buffer.concat([bytesOf(address), maskOf(prefix, isIPv6(address) ? 16 : 4)])),
  );
  const subtrees = [...names, ...ranges].map((base) => element(SEQUENCE, base));
  return new Uint8Array(element(SEQUENCE, element(PERMITTED, Buffer.concat(subtrees))));
}

/** One DER element; content of up to 65,535 bytes. */
function element(tag: number, content: Buffer): Buffer {
  const { length } = content;
  const size =
    length < 0x80 ? [length] : length < 0x100 ? [0x81, length] : [0x82, length >> 8, length & 0xff];
  return Buffer.concat([Buffer.from([tag, ...size]), content]);
}

function maskOf(prefix: number, byteCount: number): Buffer {
  return Buffer.from(
    Array.from({ length: byteCount }, (_, index) => {
      const bits = Math.min(8, Math.max(0, prefix - index * 8));
      return (0xff << (8 - bits)) & 0xff;
    }),
  );
}

/** The ranges are written with at most one group of zeros, at the end or before a last group. */
function bytesOf(address: string): Buffer {
  if (!isIPv6(address)) return Buffer.from(address.split('.').map(Number));
  const [head = '', tail = ''] = address.split('::');
  const groupsOf = (text: string) =>
    text === '' ? [] : text.split(':').map((group) => Number.parseInt(group, 16));
  const [front, back] = [groupsOf(head), groupsOf(tail)];
  const groups = [...front, ...Array<number>(8 - front.length - back.length).fill(0), ...back];
  return Buffer.from(groups.flatMap((group) => [group >> 8, group & 0xff]));
}
