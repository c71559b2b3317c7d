/**
 * Names of classes that a signed sheet is dressed by: those of the sheet itself and of what is drawn on it. Whatever else
 * a sheet says that it is, a notice of the app's or its bar, it has no looks.
 */
const ofASheet =
  /^(?:sheet|drawing|form-drawing|verdict-band|verdict-mark|caution|row|input-rows|frozen-sheet-signature)(?:-[a-z-]+)?$/;

/** The app's rules for a sheet, for a root of its own; nothing where the browser can make no sheet of rules. */
export function sheetStyles(): CSSStyleSheet | undefined {
  if (typeof CSSStyleSheet !== 'function' || !('replaceSync' in CSSStyleSheet.prototype)) return undefined;
  const styles = new CSSStyleSheet();
  styles.replaceSync([...document.styleSheets].map((one) => textOf(rulesIn(one))).join('\n'));
  return styles;
}

function rulesIn(one: CSSStyleSheet): CSSRuleList | readonly CSSRule[] {
  try {
    return one.cssRules;
  } catch {
    // A sheet of rules that a browser's extension put in from elsewhere can't be read.
    return [];
  }
}

function textOf(rules: CSSRuleList | readonly CSSRule[]): string {
  return Array.from(rules, ruleText).join('\n');
}

function ruleText(rule: CSSRule): string {
  if (rule instanceof CSSStyleRule) return styleText(rule);
  if (rule instanceof CSSMediaRule) return `@media ${rule.media.mediaText} { ${textOf(rule.cssRules)} }`;
  return rule instanceof CSSSupportsRule
    ? `@supports ${rule.conditionText} { ${textOf(rule.cssRules)} }`
    : '';
}

/** Of a list of selectors only those that are for a sheet; one that goes by an id is the app's. */
function styleText({ selectorText, style }: CSSStyleRule): string {
  const kept = selectorsIn(selectorText).filter(isForASheet);
  return kept.length === 0 ? '' : `${kept.join(',')} { ${style.cssText} }`;
}

/** A list at its own commas; one inside of brackets belongs to a selector. */
function selectorsIn(list: string): readonly string[] {
  let deep = 0;
  let last = '';
  const before: string[] = [];
  for (const character of list) {
    if (character === '(') deep += 1;
    if (character === ')') deep -= 1;
    if (character === ',' && deep === 0) {
      before.push(last);
      last = '';
    } else last += character;
  }
  return [...before, last];
}

function isForASheet(selector: string): boolean {
  return (
    !selector.includes('#') &&
    [...selector.matchAll(/\.([\w-]+)/g)].every(([, name = '']) => ofASheet.test(name))
  );
}
