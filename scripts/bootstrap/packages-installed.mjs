import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectRoot } from './project-root.mjs';

/**
 * True when node_modules holds what package-lock.json asks for on this platform. npm lists what it installed in
 * node_modules/.package-lock.json as its last act, so an installation that was cut short has no such list.
 */
export function packagesInstalled() {
  const wanted = readPackages('package-lock.json');
  const installed = readPackages('node_modules/.package-lock.json');
  if (installed.size === 0) return false;
  for (const [path, { version, integrity, optional, devOptional }] of wanted) {
    const found = installed.get(path);
    if (found === undefined && (optional || devOptional)) continue;
    if (found?.version !== version || found.integrity !== integrity) return false;
  }
  return [...installed.values()].every(fitsPlatform);
}

function readPackages(lockPath) {
  try {
    const { packages } = JSON.parse(readFileSync(join(projectRoot, lockPath), 'utf8'));
    return new Map(Object.entries(packages).filter(([path]) => path !== ''));
  } catch (error) {
    if (error.code === 'ENOENT') return new Map();
    throw error;
  }
}

function fitsPlatform({ os, cpu }) {
  return allows(os, process.platform) && allows(cpu, process.arch);
}

function allows(list, value) {
  if (list === undefined || list.includes(value) || list.includes('any')) return true;
  const excluded = list.filter((entry) => entry.startsWith('!'));
  return excluded.length > 0 && !excluded.includes(`!${value}`);
}
