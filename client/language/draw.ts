import { type ComponentChild, options, type VNode } from 'preact';
import { onScreen } from './languages.ts';

/** Attributes that a person reads or hears. */
const READ_OUT = ['aria-label', 'placeholder', 'title', 'alt'] as const;

interface Drawn {
  children: ComponentChild;
  /** Words that nobody has translated. */
  left: boolean;
}

/**
 * Puts the texts of every element into the language of this page as the element is made, so that pages are written in
 * English and say nothing of languages. Not those of an element with `translate={false}`: words of people, or words that
 * are in this language already. An element that is left in English says so, for voices that read the screen.
 */
export function drawInOwnLanguage(): void {
  const before = options.vnode;
  options.vnode = (vnode) => {
    if (onScreen().translate && typeof vnode.type === 'string') translateVNode(vnode as VNode<Props>);
    before?.(vnode);
  };
}

type Props = Record<string, unknown> & { children?: ComponentChild };

function translateVNode({ props }: VNode<Props>): void {
  for (const name of READ_OUT) {
    const text = props[name];
    if (typeof text === 'string') props[name] = onScreen().translate?.(text) ?? text;
  }
  if (props.translate === false || props.children === undefined) return;
  const { children, left } = draw(props.children);
  props.children = children;
  if (left && props.lang === undefined) props.lang = 'en';
}

function draw(children: ComponentChild): Drawn {
  if (!Array.isArray(children)) return isText(children) ? drawRun([children]) : { children, left: false };
  let left = false;
  const drawn: ComponentChild[] = [];
  for (let i = 0; i < children.length; ) {
    const run = runAt(children, i);
    if (run.length === 0) {
      const child = children[i] as ComponentChild;
      const inner = Array.isArray(child) ? draw(child) : { children: child, left: false };
      drawn.push(inner.children);
      left ||= inner.left;
      i++;
    } else {
      const made = drawRun(run);
      // The places of the others stay as they are: elements are known by them.
      drawn.push(made.children, ...run.slice(1).map(() => null));
      left ||= made.left;
      i += run.length;
    }
  }
  return { children: drawn, left };
}

const isText = (child: unknown): child is string | number =>
  typeof child === 'string' || typeof child === 'number';
const isNothing = (child: unknown): boolean => child == null || typeof child === 'boolean';

/** The texts side by side from `from` on, with the nothings between them: they are one sentence. */
function runAt(children: readonly ComponentChild[], from: number): readonly ComponentChild[] {
  if (!isText(children[from])) return [];
  let end = from + 1;
  for (let i = end; i < children.length && (isText(children[i]) || isNothing(children[i])); i++)
    if (isText(children[i])) end = i + 1;
  return children.slice(from, end);
}

function drawRun(run: readonly ComponentChild[]): Drawn {
  const text = run.filter(isText).join('');
  const [, before = '', core = '', after = ''] = /^(\s*)(.*?)(\s*)$/s.exec(text) ?? [];
  const said = onScreen().translate?.(core);
  return said === undefined
    ? { children: text, left: true }
    : { children: `${before}${said}${after}`, left: false };
}
