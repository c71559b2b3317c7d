import { cleanup, fireEvent, screen, waitFor, within } from '@testing-library/preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { charts, type Chart } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { ChartsScreen } from '../../../src/screens/charts/charts-screen.tsx';
import { getSetting, putSetting } from '../../../src/store/kept/settings.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { readReference } from '../../reference/read-csv.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

afterEach(clearAway);

async function at(chart: Chart | 'list'): Promise<void> {
  onScreen(await openForTest(), <ChartsScreen chart={chart} />);
}

const press = (name: string) => fireEvent.click(screen.getByRole('button', { name }));
const rowsOf = () => [...document.querySelectorAll('.row')].map((row) => row.textContent ?? '');

describe('the charts', () => {
  test('are all in the list, sizes and drills first', async () => {
    await at('list');
    const links = within(screen.getByRole('main')).getAllByRole('link');
    expect(links.map((link) => link.getAttribute('href'))).toEqual(
      charts.map((chart) => `#/charts/${chart}`),
    );
    expect(links[0]?.textContent).toContain('Sizes and drills');
  });

  test.each(charts)('%s has a heading of its own', async (chart) => {
    await at(chart);
    expect(screen.getByRole('heading', { level: 1 }).textContent).not.toBe('');
  });
});

test('the charts are entered at the one that was looked at last, also when the phone is switched on again', async () => {
  const store = await openForTest();
  const patience = { timeout: 30_000 };
  const place = () => screen.getByRole('link', { name: 'Charts' }).getAttribute('href');
  location.hash = '#/charts/fits';
  onScreen(store, <App store={store} />);
  expect(await screen.findByRole('heading', { name: 'Fits' }, patience)).toBeTruthy();
  location.hash = '#/drawer';
  await waitFor(() => expect(place()).toBe('#/charts/fits'), patience);
  // The list of all charts is none.
  location.hash = '#/charts/list';
  await screen.findByRole('heading', { name: 'All charts' }, patience);
  expect(place()).toBe('#/charts/fits');
  cleanup();
  expect(await getSetting(store, 'lastChart')).toBe('fits');
  location.hash = '#/jobs';
  onScreen(store, <App store={store} />);
  await waitFor(() => expect(place()).toBe('#/charts/fits'), patience);
});

describe('the tap drill chart', () => {
  test('says for 3/8-16 at 75 %: .3141 in, and 5/16 with 77.0 % below it (WE27)', async () => {
    await at('tap-drills');
    press('3/8');
    press('3/8-16 UNC');
    expect(rowsOf()[0]).toBe('Hole for 75 % of thread.3141 in');
    expect(rowsOf()[1]).toMatch(/^5\/16 in .*inside 2B77\.0 %$/);
  });

  test('goes to any percentage, and no further than 40 and 100', async () => {
    await at('tap-drills');
    press('M8');
    press('M8 × 1.25');
    press('5 percent less');
    press('1 percent less');
    // 8 − 1.299038 · 1.25 · .69 = 6.8796
    expect(rowsOf()[0]).toBe('Hole for 69 % of thread6.88 mm');
    for (let presses = 0; presses < 9; presses += 1) press('5 percent more');
    expect(rowsOf()[0]).toMatch(/^Hole for 100 %/);
    for (let presses = 0; presses < 15; presses += 1) press('5 percent less');
    expect(rowsOf()[0]).toMatch(/^Hole for 40 %/);
  });

  test('lists threads that have no wire insert too', async () => {
    await at('tap-drills');
    press('#0');
    press('#0-80 UNF');
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Tap drills, #0-80 UNF');
  });
});

describe('clearance holes', () => {
  test('of a 7/16 bolt: 29/64, 15/32, 31/64 (ASME B18.2.8)', async () => {
    await at('clearance-holes');
    press('7/16');
    expect(rowsOf().map((row) => row.match(/\d+\/\d+$/)?.[0])).toEqual(['29/64', '15/32', '31/64']);
  });

  test('of an M10: 10.5, 11, 12 mm (ISO 273)', async () => {
    await at('clearance-holes');
    press('M10');
    expect(rowsOf().map((row) => row.match(/[\d.]+ mm$/)?.[0])).toEqual(['10.50 mm', '11.00 mm', '12.00 mm']);
  });
});

describe('fits', () => {
  test('of 25 mm, H7/g6: .007 to .041 mm of clearance (ISO 286: H7 0 to +21, g6 −7 to −20)', async () => {
    await at('fits');
    press('25');
    expect(rowsOf().find((row) => row.startsWith('H7/g6'))).toContain('0.007 to 0.041 mm of clearance');
    press('Another size');
    press('1/2');
    // ANSI B4.1, RC5 over .40 to .71 in: 1.2 to 2.9 thousandths
    expect(rowsOf().find((row) => row.startsWith('RC5'))).toContain('.0012 to .0029 of clearance');
  });
});

describe('the list of fits at one size', () => {
  test('names its standard once, and which of its rows are from memory', async () => {
    await at('fits');
    press('25');
    const note = () => screen.getByRole('main').textContent;
    expect(note().match(/ISO 286-1/g)).toHaveLength(1);
    press('Another size');
    press('1/2');
    const fromMemory = readReference('ansi_b41.csv')
      .filter((row) => row.cell('over_in') === '0.40' && row.cell('basis') === 'memory')
      .map((row) => row.cell('class'));
    expect(note().match(/ANSI B4\.1/g)).toHaveLength(1);
    expect(note()).toContain(
      `ANSI B4.1; from memory: ${fromMemory.slice(0, -1).join(', ')} and ${fromMemory.at(-1)}`,
    );
  });

  test('opens at its top, also where its size was pressed far down', async () => {
    const shown = vi.spyOn(Element.prototype, 'scrollIntoView');
    await at('fits');
    press('80');
    await waitFor(() => expect(shown.mock.contexts).toEqual([screen.getByRole('main')]));
    shown.mockRestore();
  });
});

describe('materials', () => {
  test('show expansion first, and any other figure at one press', async () => {
    await at('materials');
    // Callister, App. B Table B.6
    expect(rowsOf().find((row) => row.startsWith('Aluminum 6061'))).toContain('23.6 per °C');
    press('Stiffness');
    expect(rowsOf().find((row) => row.startsWith('Low carbon steel'))).toContain('207 GPa');
    press('High-speed steel');
    expect(rowsOf().find((row) => row.startsWith('Titanium'))).toContain('30–50 ft/min');
    press('Strength');
    expect(rowsOf().find((row) => row.startsWith('Titanium'))).toContain('from memory');
  });

  test('of a metric shop have speeds in m/min and for a bar of 25 mm, beside what the book prints', async () => {
    const store = await openForTest();
    worked(await putSetting(store, 'shownUnit', 'mm'));
    onScreen(store, <ChartsScreen chart="materials" />);
    press('High-speed steel');
    // 25 to 105 ft/min · 0.3048 = 7.6 to 32.0 m/min; · 1000 / (π · 25 mm) = 97.0 to 407.5
    await waitFor(() => {
      const stainless = rowsOf().find((row) => row.startsWith('Stainless 303'));
      expect(stainless).toMatch(
        /: 25–105 ft\/min; 25-55 rough, 65-105 finish8–32 m\/min97–407 rpm at 25 mm$/,
      );
    });
    press('Carbide');
    // one figure: 1170 ft/min · 0.3048 = 356.6 m/min
    expect(rowsOf().find((row) => row.startsWith('Brass'))).toContain('1170 ft/min357 m/min');
    expect(rowsOf().find((row) => row.startsWith('Acetal'))).toContain('not found');
  });

  test('of a shop in inches have speeds in ft/min and for a bar of 1 in', async () => {
    await at('materials');
    press('High-speed steel');
    // 12 · 25 / π = 95.5, 12 · 105 / π = 401.1
    expect(rowsOf().find((row) => row.startsWith('Stainless 303'))).toMatch(
      /finish25–105 ft\/min95–401 rpm at 1 in$/,
    );
  });

  test('offer no more rpm than a chuck is turned: 1000, or what the shop says its lathe may', async () => {
    await at('materials');
    press('Carbide');
    // 12 · 655 / π = 2502 and 12 · 2820 / π = 10,772: no chuck is turned at that.
    const aluminium = () => rowsOf().find((row) => row.startsWith('Aluminum 6061'));
    await waitFor(() => expect(aluminium()).toMatch(/1000 rpm at 1 in, the chuck’s most$/));
    await clearAway();
    const store = await openForTest();
    worked(await putSetting(store, 'lathe', { speedsRpm: [], mostRpm: 2600 }));
    onScreen(store, <ChartsScreen chart="materials" />);
    press('Carbide');
    await waitFor(() => expect(aluminium()).toMatch(/2502–2600 rpm at 1 in, the chuck’s most$/));
  });
});

describe('measuring tools', () => {
  test('show the limit that a standard allows: a 0–25 mm micrometer ±4 µm (DIN 863-1)', async () => {
    await at('measuring-tools');
    expect(rowsOf().some((row) => row.startsWith('0-25 mm') && row.endsWith('±4 µm'))).toBe(true);
  });
});
