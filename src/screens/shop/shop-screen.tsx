import { marked } from '../../engine/length/decimal-text.ts';
import { readEntry } from '../../engine/length/entry.ts';
import { lengthOf, sameLength } from '../../engine/length/length.ts';
import type { KeptDial, SettingKey, SettingValues } from '../../store/base/records.ts';
import { changeSetting, putSetting } from '../../store/kept/settings.ts';
import { appVersion } from '../../version.ts';
import { Button } from '../common/button.tsx';
import { LatheCaution } from '../common/lathe-caution.tsx';
import { Choice, UnitChoice } from '../common/choice.tsx';
import { lazyScreen } from '../common/lazy-screen.tsx';
import { Page } from '../common/page.tsx';
import { KeptField } from '../common/kept-field.tsx';
import { Trouble, useTold } from '../common/told.tsx';
import { UndoKey } from '../common/undo-key.tsx';
import { saidIfRefused } from '../common/said-if-refused.ts';
import { Together } from '../common/together.tsx';
import { useStore } from '../common/store-context.ts';
import { useDial } from '../common/use-dial.ts';
import { useLight, usePadSize, useSetting, useShownUnit } from '../common/use-settings.ts';
import { DemoPart } from './demo-part.tsx';
import { MillFieldScreen, millField } from './mill-screens.tsx';
import { MillPart } from './mill-part.tsx';
import { LathePart } from './lathe-part.tsx';
import { MostRpmScreen, SpeedsScreen } from './lathe-speeds.tsx';
import { slideField, SlideFieldScreen } from './slide-screens.tsx';
import { StoragePart } from './storage-part.tsx';
import { ToolsPart } from './tools-part.tsx';
import './shop-screen.css';

// Usual graduations of a cross-slide dial. Common practice, no source.
const GRADUATIONS: readonly string[] = ['.0005 in', '.001 in', '.002 in', '0.01 mm', '0.02 mm', '0.05 mm'];

// It knows every worksheet's fields by name, and is seldom wanted.
const BothScreen = lazyScreen(() => import('../both/both-screen.tsx').then((file) => file.BothScreen));

/** What the shop has: units, pad, lathe, measuring tools; and the keeping of the records. */
export function ShopScreen({ field }: { field?: string }) {
  if (field === 'both') return <BothScreen />;
  if (field === 'speeds') return <SpeedsScreen />;
  if (field === 'most-rpm') return <MostRpmScreen />;
  const mill = field === undefined ? undefined : millField(field);
  if (mill) return <MillFieldScreen key={field} of={mill} />;
  const slide = field === undefined ? undefined : slideField(field);
  return slide ? <SlideFieldScreen key={field} {...slide} /> : <Shop />;
}

function Shop() {
  return (
    <Page title="Shop" subtitle="units, lathe, tools, records">
      <UnitChoice />
      <DecimalChoice />
      <PhoneChoices />
      <CrossSlideChoices />
      <LathePart />
      <MillPart />
      <ShopName />
      <Together>
        <ToolsPart />
        <div class="shop-part-keys shop-undo">
          <UndoKey />
        </div>
        <StoragePart />
        <DemoPart />
        <LatheCaution />
        <p class="shop-version">Slipfit {appVersion}</p>
      </Together>
    </Page>
  );
}

/** As it stands at the head of a sheet. */
function ShopName() {
  const store = useStore();
  const name = useSetting('shopName') ?? '';
  const { trouble, told } = useTold();
  return (
    <>
      <KeptField
        label="The shop’s name"
        hint="As it should stand on the sheet"
        kept={name}
        onWords={(words) => told(putSetting(store, 'shopName', words))}
      />
      <Trouble>{trouble}</Trouble>
    </>
  );
}

/** In millimetres: whether a point or a comma stands before the decimals. */
function DecimalChoice() {
  const store = useStore();
  const unit = useShownUnit();
  const mark = useSetting('decimalMark') ?? '.';
  if (unit !== 'mm') return null;
  return (
    <Choice title="Decimals are written">
      {(['.', ','] as const).map((one) => (
        <Button
          key={one}
          chosen={mark === one}
          onPress={() => void saidIfRefused(putSetting(store, 'decimalMark', one))}
        >
          {`12${one}5`}
        </Button>
      ))}
    </Choice>
  );
}

/** How its keys stand and where it is read. */
function PhoneChoices() {
  const store = useStore();
  const padSize = usePadSize();
  const light = useLight();
  const put = <Key extends SettingKey>(key: Key, value: SettingValues[Key]) =>
    void saidIfRefused(putSetting(store, key, value));
  return (
    <>
      <Choice title="Keypad">
        <Button chosen={padSize === 'standard'} onPress={() => put('padSize', 'standard')}>
          four columns
        </Button>
        <Button chosen={padSize === 'glove'} onPress={() => put('padSize', 'glove')}>
          wide, for gloves
        </Button>
      </Choice>
      <Choice title="The phone is read in">
        <Button chosen={light === 'shop'} onPress={() => put('light', 'shop')}>
          the shop
        </Button>
        <Button chosen={light === 'sun'} onPress={() => put('light', 'sun')}>
          full sun
        </Button>
      </Choice>
    </>
  );
}

/** What the dial that most cuts are set by reads, and how fine. */
function CrossSlideChoices() {
  const store = useStore();
  const dial = useDial();
  const change = (to: (now: KeptDial) => KeptDial) =>
    void saidIfRefused(changeSetting(store, 'dial', (kept) => to(kept ?? dial)));
  return (
    <>
      <Choice title="Lathe: the cross-slide dial reads">
        {(['diameter', 'radius'] as const).map((reads) => (
          <Button
            key={reads}
            chosen={dial.reads === reads}
            onPress={() => change((now) => ({ ...now, reads }))}
          >
            {reads}
          </Button>
        ))}
      </Choice>
      <Choice title="One graduation of the dial">
        {GRADUATIONS.map((text) => (
          <Button
            key={text}
            chosen={sameLength(dial.graduation.exact, lengthOf(text))}
            onPress={() => change((now) => withGraduation(now, text))}
          >
            {marked(text)}
          </Button>
        ))}
      </Choice>
    </>
  );
}

function withGraduation(dial: KeptDial, text: string): KeptDial {
  const entry = readEntry(text, { unit: 'in' });
  return entry.ok ? { ...dial, graduation: entry.value } : dial;
}
