/** Walking what parse5, a parser of the HTML standard, makes of a page. */
import type { DefaultTreeAdapterTypes } from 'parse5';

type Node = DefaultTreeAdapterTypes.Node;
type Element = DefaultTreeAdapterTypes.Element;

function children(node: Node): readonly Node[] {
  return 'childNodes' in node ? node.childNodes : [];
}

/** Every element of that name below a node, in the order of the page. */
export function within(node: Node, name: string): readonly Element[] {
  return children(node).flatMap((child) => [
    ...('tagName' in child && child.tagName === name ? [child] : []),
    ...within(child, name),
  ]);
}

/** The text below a node, no-break spaces as spaces. */
export function textOf(node: Node): string {
  if ('value' in node) return node.value.replaceAll('\u00a0', ' ');
  return children(node).map(textOf).join('');
}
