// Imported first of all. A browser without what everything else takes for granted says so here; else it would leave the
// page's frame standing, with places that lead nowhere. toSorted came last of what is used: Chrome 110, Safari 16.
if (!('toSorted' in Array.prototype)) {
  const told = document.createElement('p');
  told.className = 'too-old';
  told.setAttribute('role', 'alert');
  told.textContent =
    'This browser is too old for Slipfit. It needs Chrome or Edge 110, Firefox 121, Safari 16, or a later one. What was kept in it stays as it is.';
  document.getElementById('app')?.replaceChildren(told);
  throw new Error('this browser is too old');
}
