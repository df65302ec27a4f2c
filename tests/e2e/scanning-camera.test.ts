import { join } from 'node:path';
import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faultsSeenByAxe } from '@/tests/support/axe-faults';
import { launchBrowser } from '@/tests/support/browser';
import { symbolModules, writeBoardVideo } from '@/tests/support/camera-video';
import { chooseStation, openShift, type Shift, verdict } from '@/tests/support/shift-scene';
import { makeTemporaryFolder } from '@/tests/support/temporary-folder';

let shift: Shift;
const folder = makeTemporaryFolder();

beforeAll(async () => {
  shift = await openShift();
});
afterAll(async () => {
  await shift?.close();
  folder.remove();
});

const PHONE = { viewport: { width: 390, height: 844 } };

/** Opens a page in a browser whose camera looks at a board with this symbol. */
async function withCamera(
  symbol: { kind: 'qrcode' | 'datamatrix'; text: string; modulePx: number },
  use: (open: (badge: string, path: string) => Promise<Page>) => Promise<void>,
): Promise<void> {
  const path = join(folder.path, `${symbol.kind}.y4m`);
  writeBoardVideo(path, { modules: symbolModules(symbol.kind, symbol.text), modulePx: symbol.modulePx });
  const browser = await launchBrowser({
    args: [
      '--use-fake-device-for-media-stream',
      '--use-fake-ui-for-media-stream',
      `--use-file-for-fake-video-capture=${path}`,
    ],
  });
  try {
    await use((badge, pagePath) => shift.tabletIn(browser, badge, pagePath, PHONE));
  } finally {
    await browser.close();
  }
}

test('a QR code on a board is seen by the camera, checked, and counts once while it stays in sight', async () => {
  const unit = 'WX4C0000301';
  await shift.send(...shift.unit(unit, 2));
  await withCamera({ kind: 'qrcode', text: unit, modulePx: 6 }, async (open) => {
    const page = await open('op-1', '/station');
    await chooseStation(page, 'L1-TEST');
    await page.getByRole('button', { name: 'Scan with the camera' }).click();
    await verdict(page, 'GO', unit);
    expect(await page.evaluate(() => 'BarcodeDetector' in window)).toBe(false);
    expect(await faultsSeenByAxe(page)).toEqual([]);
    // The camera has looked a dozen times more by now.
    await page.waitForTimeout(2500);
    expect(await page.getByText('is in work already').count()).toBe(0);
    await page.getByRole('button', { name: 'Pass', exact: true }).click();
    await page.getByText(`${unit}: Pass recorded`).waitFor();
    await page.getByRole('button', { name: 'Close the camera' }).click();
    await page.getByRole('region', { name: 'Camera' }).waitFor({ state: 'detached' });
  });
  const { events } = await shift.asBuilt(unit);
  expect(events.filter(({ type }) => type === 'unit.processed')).toHaveLength(3);
});

test('a Data Matrix on a board is read as the label that it is', async () => {
  const gs = '\u001d';
  const label = `[)>\u001e06${gs}3SRL-3001${gs}PC-100N${gs}1TLOT-77${gs}Q2500\u001e\u0004`;
  await withCamera({ kind: 'datamatrix', text: label, modulePx: 7 }, async (open) => {
    const page = await open('mh-1', '/items');
    await page.getByRole('button', { name: 'Receive', exact: true }).first().click();
    await page.getByRole('button', { name: 'Scan with the camera' }).click();
    await page.getByText('Receive RL-3001').waitFor();
    expect(await page.getByLabel('Part number (optional)').inputValue()).toBe('C-100N');
    expect(await page.getByLabel('Lot (optional)').inputValue()).toBe('LOT-77');
    expect(await page.getByLabel('Quantity (optional)').inputValue()).toBe('2500');
  });
});

test('the platform’s detector is used where it reads both symbols', async () => {
  const unit = 'WX4C0000302';
  await shift.send(...shift.unit(unit, 2));
  await withCamera({ kind: 'qrcode', text: 'not what the detector says', modulePx: 4 }, async (open) => {
    const page = await open('op-1', '/station');
    await page.addInitScript((code) => {
      Object.assign(window, {
        BarcodeDetector: class {
          static async getSupportedFormats(): Promise<string[]> {
            return ['qr_code', 'data_matrix', 'ean_13'];
          }
          detect = async () => [{ rawValue: code }];
        },
      });
    }, unit);
    await page.reload();
    await chooseStation(page, 'L1-TEST');
    await page.getByRole('button', { name: 'Scan with the camera' }).click();
    await verdict(page, 'GO', unit);
  });
});

test('without a camera it says what to do instead', async () => {
  const page = await shift.tablet('op-1', '/station', { permissions: [] });
  await chooseStation(page, 'L1-TEST');
  await page.getByRole('button', { name: 'Scan with the camera' }).click();
  await page.getByRole('alert').filter({ hasText: 'camera' }).waitFor();
  expect(await faultsSeenByAxe(page)).toEqual([]);
});
