import { giveRescue } from './screens/common/give-rescue.ts';

// The script of rescue.html: it has nothing in common with the app's own files, so that it works where those are gone.
const key = document.querySelector('button');
const said = document.querySelector('[role=status]');

key?.addEventListener('click', () => {
  key.disabled = true;
  void giveRescue().then((sentence) => {
    if (said) said.textContent = sentence;
    key.disabled = false;
  });
});
