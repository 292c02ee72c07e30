// The launch token of the address is traded for a cookie once, and leaves the address bar and the history.

export async function enter(): Promise<void> {
  const token = new URLSearchParams(window.location.search).get('token');
  if (token === null) return;
  await fetch('/api/session', {
    method: 'POST',
    credentials: 'same-origin',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ token }),
  }).catch(() => undefined);
  window.history.replaceState(null, '', `/${window.location.hash}`);
}
