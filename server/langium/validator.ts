// The findings of an open document are those of the engine.
import type { DocumentValidator, LangiumDocument } from 'langium';
import { pathOf } from '../places.ts';
import type { Publisher } from '../publisher.ts';
import type { Session } from '../session.ts';

export const engineValidator = (session: Session, publisher: Publisher): DocumentValidator => ({
  async validateDocument(document: LangiumDocument) {
    const path = pathOf(document.uri);
    // The check tells the publisher, which sends what has changed, of this file and of others.
    if (session.stale.has(path)) session.check(path);
    publisher.checked(path);
    return [];
  },
});
