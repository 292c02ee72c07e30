// Only pages of this server: what a browser says of who asks has to be this origin, or a person who typed the address.
import { type Refusal, refusal } from '../refusal.ts';
import { type Asked, hasHeader, headerOf, isApi } from './asked.ts';
import { ownHosts } from './host.ts';

export function judgeOrigin(asked: Asked): Refusal | null {
  if (hasHeader(asked, 'origin')) {
    const origin = headerOf(asked, 'origin') ?? '';
    const own = ownHosts(asked.port).map((host) => `http://${host}`);
    if (!own.includes(origin.toLowerCase())) return crossSite(origin);
  }
  if (!hasHeader(asked, 'sec-fetch-site')) return null;
  const site = headerOf(asked, 'sec-fetch-site') ?? '';
  if (site === 'same-origin' || site === 'none' || isFollowedLink(asked)) return null;
  return crossSite(site);
}

/** A link from elsewhere may open the page, which holds nothing; the page then asks for itself. */
function isFollowedLink(asked: Asked): boolean {
  const isPage =
    headerOf(asked, 'sec-fetch-mode') === 'navigate' && headerOf(asked, 'sec-fetch-dest') === 'document';
  return isPage && asked.method === 'GET' && !isApi(asked);
}

function crossSite(origin: string): Refusal {
  return refusal(403, 'cross-site', { origin: origin.slice(0, 60) });
}
