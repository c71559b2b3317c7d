import { useEffect } from 'preact/hooks';

/**
 * The job and the page in boxes in the margin of each printed page (Chrome 131; for others see `on-paper.tsx`). The name
 * goes in as a quoted string, never as a rule.
 */
export function usePageFooter(name: string): void {
  useEffect(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(footerRules(name));
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== sheet);
    };
  }, [name]);
}

export function footerRules(name: string): string {
  const font = 'font: 9pt system-ui, sans-serif; color: #000;';
  return `@page {
    @bottom-left { content: ${quoted(name)}; ${font} }
    @bottom-right { content: "page " counter(page) " of " counter(pages); ${font} }
  }`;
}

/** Every character but plain letters, digits and spaces as its number, so that none of them ends the string. */
function quoted(text: string): string {
  const escaped = text.replace(/[^\p{L}\p{N} ]/gu, (one) => `\\${(one.codePointAt(0) ?? 0).toString(16)} `);
  return `"${escaped}"`;
}
