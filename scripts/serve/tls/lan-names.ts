import { BlockList, isIP } from 'node:net';
import { hostname, networkInterfaces } from 'node:os';

/** Addresses that never leave a plant's network; the authority may speak for these only. */
export const PRIVATE_RANGES = [
  ['10.0.0.0', 8],
  ['172.16.0.0', 12],
  ['192.168.0.0', 16],
  ['100.64.0.0', 10],
  ['169.254.0.0', 16],
  ['127.0.0.0', 8],
  ['fc00::', 7],
  ['fe80::', 10],
  ['::1', 128],
] as const satisfies readonly (readonly [string, number])[];

const PRIVATE = new BlockList();
for (const [address, prefix] of PRIVATE_RANGES)
  PRIVATE.addSubnet(address, prefix, address.includes(':') ? 'ipv6' : 'ipv4');

const LOOPBACK = ['127.0.0.1', '::1'];

/** What a certificate on the plant's network is for: the private addresses of this computer and its name. */
export type LanNames = { hosts: string[]; addresses: string[] };

/** The names under which a server that listens on `host` is reached from the plant's network, and from this computer. */
export function lanNames(host: string): LanNames {
  const own = Object.values(networkInterfaces()).flatMap((each) => each ?? []);
  const all = own.map(({ address }) => address);
  const listened = host === '0.0.0.0' ? all.filter((each) => isIP(each) === 4) : host === '::' ? all : [host];
  const addresses = [...new Set([...listened, ...LOOPBACK])].filter(isPrivateAddress).sort();
  const name = hostname().toLowerCase();
  const hosts = /^[a-z0-9]([a-z0-9.-]{0,251}[a-z0-9])?$/.test(name) && isIP(name) === 0 ? [name] : [];
  return { hosts: [...new Set([...hosts, 'localhost'])], addresses };
}

/** The address to open on a tablet: not this computer's own loop, IPv4 before IPv6; null without a network. */
export function tabletAddress({ addresses }: LanNames): string | null {
  const reachable = addresses.filter(
    (each) => !each.startsWith('127.') && each !== '::1' && !/^fe80:/i.test(each),
  );
  return reachable.find((each) => isIP(each) === 4) ?? reachable[0] ?? null;
}

function isPrivateAddress(address: string): boolean {
  const family = isIP(address);
  return family !== 0 && PRIVATE.check(address, family === 6 ? 'ipv6' : 'ipv4');
}
