import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';

/**
 * Text that names the living process with this id and no other one, ever; null when there is none.
 * Process ids are reused, after a reboot above all, so an id alone does not prove that a lock is held.
 */
export function processIdentity(pid) {
  return process.platform === 'linux' ? linuxIdentity(pid) : portableIdentity(pid);
}

function linuxIdentity(pid) {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    // Fields after the command name, which may itself hold spaces and brackets: state, then start time as the 20th.
    const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
    if (fields[0] === 'Z' || fields[0] === 'X') return null;
    const bootId = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
    return `${bootId}/${pid}/${fields[19]}`;
  } catch {
    return null;
  }
}

function portableIdentity(pid) {
  try {
    process.kill(pid, 0);
  } catch (error) {
    if (error.code !== 'EPERM') return null;
  }
  const ps = spawnSync('ps', ['-o', 'lstart=', '-p', String(pid)], { encoding: 'utf8' });
  return `${pid}/${ps.status === 0 ? ps.stdout.trim() : 'alive'}`;
}
