import { giveRescue } from './screens/common/give-rescue.ts';

// The script of rescue.html: it has nothing in common with the app's own files, so that it works where those are gone.
const key = document.querySelector('button');
const said = document.querySelector('[role=status]');
// The policy lets no style stand in a page; what a script sets is its own.
document.body.style.cssText = 'margin: 24px; max-width: 34em; font: 20px/1.4 sans-serif';
if (key) key.style.cssText = 'padding: 16px 24px; font: inherit; font-weight: 700';

key?.addEventListener('click', () => {
  key.disabled = true;
  void giveRescue().then((sentence) => {
    if (said) said.textContent = sentence;
    key.disabled = false;
  });
});
