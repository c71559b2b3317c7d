import { grouped } from '../../engine/length/decimal-text.ts';
import { shortened } from './backup-names.ts';
import type { BackupRefusal, NamedRecord } from './backup-refusal.ts';
import { fieldWords } from './field-words.ts';
import { nounOf, sayStore } from '../base/say-store.ts';

const APPLIED = 'Nothing was changed here.';

/** The sentence for a backup that was not restored: which record is wrong, and that nothing of it was applied. */
export function sayBackup(refusal: BackupRefusal): string {
  switch (refusal.code) {
    case 'not-a-backup':
      return `This file is not a Slipfit backup. ${APPLIED} Choose the file that Slipfit wrote.`;
    case 'newer-backup':
      return `This backup was written by a newer Slipfit (form ${refusal.version}). ${APPLIED} Take the new version here first.`;
    case 'too-big':
      return `This file is over ${refusal.mostMegabytes} MB, more than a backup of Slipfit comes to. ${APPLIED}`;
    case 'too-many':
      return `This file holds over ${grouped(refusal.most)} records, more than a backup of Slipfit comes to. ${APPLIED}`;
    case 'file-in-use':
      return `A file is being read already, in another window perhaps. ${APPLIED} Wait until it is done, then choose the file again.`;
    case 'no-file':
      return `No file waits to be put in. ${APPLIED} Choose the file again.`;
    case 'another-file':
      return `Another file was read since this one was shown. ${APPLIED} Choose the file again.`;
    case 'line-too-long':
      return `Line ${refusal.line} of this file is longer than any record. ${APPLIED}`;
    case 'not-text':
      return `This file can't be read as text: it is a picture or the like, or was damaged on its way. ${APPLIED} Choose the backup, or another copy of it.`;
    case 'file-unreadable':
      return `This file could not be read to its end: it was moved or changed meanwhile, perhaps. ${APPLIED} Choose it again.`;
    case 'cut-off':
      return `This backup breaks off after line ${refusal.lines}: its end is missing. ${APPLIED} Use another copy.`;
    case 'checksum-differs':
      return `This backup was changed or damaged after it was written. ${APPLIED} Use another copy.`;
    case 'something-behind-the-end':
      return `Line ${refusal.line} stands behind the end of this backup, so it was changed after it was written. ${APPLIED}`;
    case 'counts-differ':
      return `This backup says that it holds ${refusal.said} of the kind “${nounOf(refusal.store)}”, and it holds ${refusal.found}. ${APPLIED} Use another copy.`;
    case 'not-json':
      return `Line ${refusal.line} of this backup can't be read. ${APPLIED} Use another copy.`;
    case 'unknown-line':
      return `Line ${refusal.line} of this backup is nothing that Slipfit knows. ${APPLIED} A newer Slipfit may have written it.`;
    case 'too-deep':
      return `Line ${refusal.line} of this backup is put together in a way that no record is. ${APPLIED}`;
    case 'forbidden-name':
      return `Line ${refusal.line} of this backup has a field named “${shortened(refusal.name)}”, which no record has. ${APPLIED}`;
    case 'wrong-field':
      return `${nameOf(refusal.record)} does not hold what it should${inField(refusal.field)}. ${APPLIED}`;
    case 'twice':
      return `${nameOf(refusal.record)} is in this backup twice. ${APPLIED}`;
    case 'belongs-to-nothing':
      return `${nameOf(refusal.record)} belongs to ${aNoun(refusal.missing)} that isn't in this backup. ${APPLIED}`;
    case 'belongs-to-another-job':
      return `${nameOf(refusal.record)} belongs to ${aNoun(refusal.of)} of another job. ${APPLIED}`;
    case 'is-of-another-job':
      return `${nameOf(refusal.record)} is here already, in another job. ${APPLIED}`;
    case 'picture-differs':
      return `${nameOf(refusal.record)} is not as large as it says, or too large for a phone. ${APPLIED}`;
    case 'typed-differs':
    case 'below-zero':
    case 'reading-differs':
    case 'sheet-differs':
      return sayFigure(refusal);
    default:
      return sayStore(refusal);
  }
}

type OfFigures = Extract<
  BackupRefusal,
  { readonly code: `${string}-differs` | 'below-zero'; readonly record: NamedRecord }
>;

function sayFigure(refusal: Exclude<OfFigures, { readonly code: 'picture-differs' }>): string {
  const record = nameOf(refusal.record);
  switch (refusal.code) {
    case 'typed-differs':
      return `${record} says “${shortened(refusal.typed)}” and holds another size. ${APPLIED} Use another copy.`;
    case 'below-zero':
      return `${record} holds “${shortened(refusal.typed)}”, and no such size can lie below zero. ${APPLIED}`;
    case 'reading-differs':
      return `${record} is here already with another value, and a logged reading never changes. ${APPLIED}`;
    case 'sheet-differs':
      return `${record} is here already with other words or figures, and a signed sheet never changes. ${APPLIED}`;
    default:
      return refusal satisfies never;
  }
}

function aNoun(store: Parameters<typeof nounOf>[0]): string {
  const noun = nounOf(store);
  return `${/^[aeiou]/.test(noun) ? 'an' : 'a'} ${noun}`;
}

/** "Reading 14 of the left bore (line 37)". */
function nameOf({ store, number, line, name, of }: NamedRecord): string {
  const noun = nounOf(store);
  const first = `${noun.slice(0, 1).toUpperCase()}${noun.slice(1)}`;
  if (of !== undefined) return `${first} ${number} of ${withArticle(of)} (line ${line})`;
  return name === undefined ? `${first} ${number} (line ${line})` : `${first} “${name}” (line ${line})`;
}

function withArticle(name: string): string {
  return /^the /i.test(name) ? name : `the ${name}`;
}

function inField(field: string): string {
  return field === '' ? '' : `: look at ${fieldWords(field)}`;
}
