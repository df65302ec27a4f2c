import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { planDemo } from '@/scripts/demo/plan-demo';
import { CRACKED_REEL, LATE_SCAN, WORN_STENCIL, WRONG_REEL } from '@/scripts/demo/stories';
import { crackedReelStory } from '@/scripts/demo/story/cracked-reel-story';

const story = crackedReelStory(planDemo('2026-03-20T18:00:00Z'));
const readme = readFileSync('README.md', 'utf8').replaceAll(/\s+/g, ' ');

it('the walk in the README names what the demo holds', () => {
  const { returned, units, byCertainty, byPlace } = story;
  const { reel, part, lot, position, defect, slot } = CRACKED_REEL;
  for (const said of [
    returned[0]?.unit ?? 'no unit returned',
    `\`${defect}\` at \`${position}\``,
    `reel \`${reel}\`, part ${part}, lot ${lot}, from slot ${slot}`,
    `${units} units used it, ${byCertainty.certain} certainly and ${byCertainty.possible} possibly`,
    `${byPlace.shipped} are shipped, ${byPlace.station} at stations, ${byPlace.stock} in stock, ${byPlace.container} in a carton, ${byPlace.returned} returned, ${byPlace.scrapped} scrapped`,
    WORN_STENCIL.stencil,
    WRONG_REEL.reel,
    LATE_SCAN.reel,
  ])
    expect(readme).toContain(said);
});
