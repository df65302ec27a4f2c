import { readPlant } from '@/lib/server/read-plant';

/** The name that the plant knows for a badge, or null. */
export async function nameOf(badge: string): Promise<string | null> {
  return (await readPlant()).operator(badge)?.name ?? null;
}
