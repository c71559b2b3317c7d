import { grouped } from '../../engine/length/decimal-text.ts';
import type { BackupStore } from '../../store/base/stores.ts';
import type { BackupPreview, JobPreview, Tally } from '../../store/file/backup-preview.ts';
import type { Restored } from '../../store/file/backup-restore.ts';
import type { FileOrigin } from '../../store/file/backup-staged.ts';
import { listed } from '../../engine/length/say-words.ts';
import { isSettingKey } from '../../store/kept/setting-schema.ts';
import { SETTING_NAMES } from '../../store/base/setting-names.ts';
import { wholeTimeWords } from '../common/day-words.ts';

/** "From R. Tiller’s phone, 25 Nov 2026, 12:30". */
export function originWords(from: FileOrigin, ownMark: string | undefined): string {
  const whose =
    from.phone !== undefined && from.phone === ownMark
      ? 'From this phone'
      : from.fitter === undefined
        ? 'From another phone'
        : `From ${from.fitter}’s phone`;
  return from.writtenAt > 0 ? `${whose}, ${wholeTimeWords(from.writtenAt)}` : whose;
}

/** What would become of a job: "new here · 14 readings, 20 other entries". */
export function jobWords({ isHere, fields, readings, others, removed, apart }: JobPreview): string {
  const comes = [
    ...counted(readings, 'reading'),
    ...counted(
      others,
      readings === 0 ? 'entry' : 'other entry',
      readings === 0 ? 'entries' : 'other entries',
    ),
  ];
  if (!isHere) return ['new here', ...(comes.length === 0 ? [] : [comes.join(', ')])].join(' · ');
  return [
    ...counted(fields, 'field changes', 'fields change'),
    ...(comes.length === 0 ? [] : [`${comes.join(', ')} more`]),
    ...counted(removed, 'entry was removed there', 'entries were removed there'),
    ...counted(apart, 'thing written on both', 'things written on both'),
  ].join(' · ');
}

export function isSame(job: JobPreview): boolean {
  const { isHere, staysRemoved, fields, readings, others, removed, apart } = job;
  return staysRemoved || (isHere && fields + readings + others + removed + apart === 0);
}

const placesOfOthers: Partial<Record<BackupStore, readonly [one: string, many: string]>> = {
  drawer: ['piece in the drawer', 'pieces in the drawer'],
  drawerCounts: ['count of a piece', 'counts of pieces'],
  tools: ['measuring tool', 'measuring tools'],
  photos: ['photo of a piece', 'photos of pieces'],
};

/** What comes to the drawer and the tools, a line each. */
export function otherWords({ others }: BackupPreview): readonly string[] {
  return Object.entries(placesOfOthers).flatMap(([name, words]) => {
    const tally = Object.entries(others).find(([store]) => store === name)?.[1];
    return tally ? tallyWords(tally, words) : [];
  });
}

function tallyWords({ added, changed }: Tally, [one, many]: readonly [string, string]): readonly string[] {
  return [
    ...counted(added, `${one} more`, `${many} more`),
    ...counted(changed, `${one} changes`, `${many} change`),
  ];
}

/** What the file sets on this phone, by name: it changes what is seen, and how the lathe is dialled. */
export function settingsWords({ settings: { kept, names } }: BackupPreview): string | undefined {
  const stays = kept > 0 ? 'What this phone has set stays. ' : '';
  const comes = names.length > 0 ? `From the file it takes ${listed(settingNames(names))}.` : '';
  return `${stays}${comes}`.trim() || undefined;
}

function settingNames(ids: readonly string[]): readonly string[] {
  const named = ids.map((id) =>
    isSettingKey(id) ? (SETTING_NAMES[id] ?? 'the tool last used') : 'a setting of a newer Slipfit',
  );
  return [...new Set(named)];
}

/** What is right in form and may be wrong all the same: the fitter is asked before it is put in. */
export function oddWords({ file: { odd } }: BackupPreview): readonly string[] {
  const { ahead = 0, dates = 0, rounded = 0 } = odd ?? {};
  return [
    ...counted(ahead, 'change claims', 'changes claim').map(
      (words) => `${words} a time after tomorrow. Here ${ahead === 1 ? 'it counts' : 'they count'} as older.`,
    ),
    ...counted(dates, 'date can’t', 'dates can’t').map(
      (words) =>
        `${words} be right: a phone’s clock was wrong, or the file was changed. Look at the dates first.`,
    ),
    ...counted(rounded, 'size is', 'sizes are').map(
      (words) => `${words} written with fewer digits than kept. What is kept counts.`,
    ),
  ];
}

/** What both phones wrote without knowing of the other's: it is not decided here. */
export function apartWords({ apart }: BackupPreview): string | undefined {
  const [things] = counted(apart, 'thing differs', 'things differ');
  return (
    things &&
    `${things}: both phones wrote ${apart === 1 ? 'it' : 'them'}, neither knowing of the other. The later one stands at first; you are asked once the file is in.`
  );
}

/** What comes along and can't be read. */
export function unreadableWords({ unreadable }: BackupPreview): string | undefined {
  const [records] = counted(unreadable, 'record');
  return (
    records &&
    `${records} can’t be read by this version. ${unreadable === 1 ? 'It comes' : 'They come'} along as ${unreadable === 1 ? 'it is' : 'they are'}, for a later one.`
  );
}

/** "1 entry new, 2 changed, 3 were here already". */
export function broughtWords({ added, changed, same }: Restored): string {
  return [
    ...counted(added, 'entry new', 'entries new'),
    ...counted(changed, 'changed', 'changed'),
    ...counted(same, 'was here already', 'were here already'),
  ].join(', ');
}

/** Nothing for none: "1 reading", "2 readings". */
export function counted(count: number, one: string, many = `${one}s`): readonly string[] {
  if (count === 0) return [];
  return [`${grouped(count)} ${count === 1 ? one : many}`];
}
