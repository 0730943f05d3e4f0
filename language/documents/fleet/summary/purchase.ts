// The one purchase of a fleet, a line for each material.
import { shown } from '../../sheets/shown.ts';
import type { FleetScene } from '../scene.ts';

/** Material, need, what comes from the shelf, what is bought, what it costs, and what buying together saves. */
export function purchaseRows({ papers }: FleetScene): readonly (readonly string[])[] {
  return papers.estimate.together.map(({ material, purchase, pooling, shelf }) => {
    const { need, onHand, buy, cost } = purchase;
    const saved = [pooling, shelf].flatMap((figure) => (figure && figure.value > 0 ? [figure.text] : []));
    return [
      shown(material),
      need.text,
      onHand && onHand.value > 0 ? onHand.text : '',
      buy.length === 0 ? 'nothing' : buy.map(({ count, what }) => `${count} x ${shown(what)}`).join(', '),
      cost?.money.text ?? 'no price',
      saved.join(' and '),
    ];
  });
}
