/**
 * The shop's words: five groups of five letters and figures, made by chance here, never chosen. 125 bits, so that guessing
 * is out of reach whoever has what is at home. No I, L, O or U: they are read as 1, 1, 0 and V.
 */
const LETTERS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const IN_A_GROUP = 5;
const GROUPS = 5;

export function makeWords(): string {
  return inGroups(byChance(IN_A_GROUP * GROUPS)).join('-');
}

/** So many letters and figures by chance, five bits each. */
export function byChance(count: number): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(count)), (byte) => LETTERS[byte % 32]).join('');
}

export function inGroups(text: string): string[] {
  return text.match(new RegExp(`.{1,${IN_A_GROUP}}`, 'g')) ?? [];
}

/** What was typed, as it was made: without spaces and dashes, letters that look alike put right. Nothing if it can't be the words. */
export function readWords(typed: string): string | undefined {
  const letters = readLetters(typed);
  return letters?.length === IN_A_GROUP * GROUPS ? inGroups(letters).join('-') : undefined;
}

export function readLetters(typed: string): string | undefined {
  const letters = typed
    .toUpperCase()
    .replace(/[\s\p{Dash}]/gu, '')
    .replace(/[IL]/g, '1')
    .replaceAll('O', '0')
    .replaceAll('U', 'V');
  return new RegExp(`^[${LETTERS}]*$`).test(letters) ? letters : undefined;
}
