import { expect, it } from 'vitest';
import { killSaves } from '../support/killedSaves.ts';
import { tempFolder } from '../support/tempFolder.ts';

it('loses nothing acknowledged and tears no file through fifty kills', { timeout: 120_000 }, async () => {
  const { kills, leftTemporary, acknowledged } = await killSaves(tempFolder(), 50, 4);
  expect(kills).toBe(50);
  // Otherwise no kill ever fell into a save, and the test shows nothing.
  expect(leftTemporary).toBeGreaterThan(10);
  expect(acknowledged).toBeGreaterThan(50);
});
