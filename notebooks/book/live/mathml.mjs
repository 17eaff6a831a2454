// The formulas of a working as MathML: those few commands of LaTeX that the library writes.
import { escaped } from './text.mjs';

const LETTERS = {
  alpha: 'α', beta: 'β', gamma: 'γ', delta: 'δ', epsilon: 'ϵ', varepsilon: 'ε', eta: 'η', theta: 'θ', kappa: 'κ',
  lambda: 'λ', mu: 'μ', nu: 'ν', xi: 'ξ', pi: 'π', rho: 'ρ', sigma: 'σ', tau: 'τ', phi: 'φ', varphi: 'φ', chi: 'χ',
  psi: 'ψ', omega: 'ω',
};
const UPRIGHT = { Delta: 'Δ', Sigma: 'Σ', Phi: 'Φ', Psi: 'Ψ', Omega: 'Ω', Gamma: 'Γ' };
const SIGNS_OF = { cdot: '·', times: '×', circ: '∘', le: '≤', ge: '≥', approx: '≈', pm: '±', infty: '∞' };
const NAMES = ['ln', 'log', 'exp', 'tan', 'sin', 'cos', 'max', 'min'];
const SPACES = { ',': 0.167, ':': 0.222, ';': 0.278, quad: 1, qquad: 2, '!': 0, ' ': 0.25 };

class Reader {
  #tokens;
  #at = 0;

  constructor(latex) {
    this.#tokens = latex.match(/\\[a-zA-Z]+|\\.|\d+(?:\.\d+)?|\s+|[\s\S]/gu) ?? [];
  }

  /** Everything up to a closing brace, a \right, or the end. */
  row(roman = false) {
    const parts = [];
    for (let token = this.#peek(); token !== undefined && token !== '}' && token !== '\\right'; token = this.#peek()) {
      if (token === '^' || token === '_') {
        this.#at++;
        const base = parts.pop() ?? '<mrow></mrow>';
        parts.push(this.#script(base, token, roman));
      } else if (/^\s+$/.test(token)) {
        this.#at++;
      } else {
        const sign = token === '-' && (parts.length === 0 || parts.at(-1).startsWith('<mo'));
        parts.push(sign ? this.#minus() : this.#atom(roman));
      }
    }
    return parts.length === 1 ? parts[0] : `<mrow>${parts.join('')}</mrow>`;
  }

  get done() {
    return this.#at >= this.#tokens.length;
  }

  #peek() {
    return this.#tokens[this.#at];
  }

  /** The minus of a number stands close to it. */
  #minus() {
    this.#at++;
    return '<mo form="prefix" lspace="0" rspace="0">−</mo>';
  }

  #script(base, sign, roman) {
    const first = this.#argument(roman);
    const other = this.#peek();
    if ((other === '^' || other === '_') && other !== sign) {
      this.#at++;
      const second = this.#argument(roman);
      const [low, high] = sign === '_' ? [first, second] : [second, first];
      return `<msubsup>${base}${low}${high}</msubsup>`;
    }
    const kind = sign === '_' ? 'msub' : 'msup';
    return `<${kind}>${base}${first}</${kind}>`;
  }

  /** What a command takes: a group or one atom. */
  #argument(roman) {
    while (/^\s+$/.test(this.#peek() ?? 'x')) {
      this.#at++;
    }
    return this.#atom(roman);
  }

  #group(roman) {
    this.#wanted('{');
    const row = this.row(roman);
    this.#wanted('}');
    return row;
  }

  #wanted(token) {
    if (this.#peek() !== token) {
      throw new Error(`a formula needs ${token}, has ${this.#peek() ?? 'its end'}`);
    }
    this.#at++;
  }

  /** The text between braces as it is written. */
  #verbatim() {
    this.#wanted('{');
    let text = '';
    while (this.#peek() !== '}' && !this.done) {
      text += this.#tokens[this.#at++];
    }
    this.#wanted('}');
    return text;
  }

  #atom(roman) {
    const token = this.#peek();
    if (token === '{') {
      return this.#group(roman);
    }
    this.#at++;
    if (token[0] === '\\') {
      return this.#command(token.slice(1), roman);
    }
    if (/^\d/.test(token)) {
      return `<mn>${token}</mn>`;
    }
    if (/^\p{L}$/u.test(token)) {
      return roman ? this.#word(token) : `<mi>${token}</mi>`;
    }
    if ('()[]|'.includes(token)) {
      return `<mo stretchy="false">${token}</mo>`;
    }
    if (token === '*') {
      return '<mo>∗</mo>';
    }
    if (token === '/') {
      return '<mo lspace="0" rspace="0">/</mo>';
    }
    if ("=+-,.<>%;:'−×·≈≤≥±²³°′".includes(token)) {
      return `<mo>${token === '-' ? '−' : escaped(token)}</mo>`;
    }
    throw new Error(`no sign of a formula: ${token}`);
  }

  /** Upright letters one after another are one word. */
  #word(first) {
    let word = first;
    while (/^\p{L}$/u.test(this.#peek() ?? '')) {
      word += this.#tokens[this.#at++];
    }
    return `<mi mathvariant="normal">${word}</mi>`;
  }

  #command(name, roman) {
    if (name === 'frac') {
      return `<mfrac>${this.#group(roman)}${this.#group(roman)}</mfrac>`;
    }
    if (name === 'sqrt') {
      return `<msqrt>${this.#group(roman)}</msqrt>`;
    }
    if (name === 'mathrm') {
      return this.#group(true);
    }
    if (name === 'text') {
      return `<mtext>${escaped(this.#verbatim()).replace(/^ | $/g, '\u00a0')}</mtext>`;
    }
    if (name === 'dot') {
      return `<mover accent="true">${this.#argument(roman)}<mo>˙</mo></mover>`;
    }
    if (name === 'left') {
      const open = this.#tokens[this.#at++];
      const row = this.row(roman);
      this.#wanted('\\right');
      const close = this.#tokens[this.#at++];
      return `<mrow><mo stretchy="true">${open}</mo>${row}<mo stretchy="true">${close}</mo></mrow>`;
    }
    if (name in LETTERS) {
      return `<mi${roman ? ' mathvariant="normal"' : ''}>${LETTERS[name]}</mi>`;
    }
    if (name in UPRIGHT) {
      return `<mi mathvariant="normal">${UPRIGHT[name]}</mi>`;
    }
    if (name in SIGNS_OF) {
      return `<mo>${SIGNS_OF[name]}</mo>`;
    }
    if (NAMES.includes(name)) {
      return `<mi>${name}</mi>`;
    }
    if (name in SPACES) {
      return `<mspace width="${SPACES[name]}em"></mspace>`;
    }
    if (name === '%') {
      return '<mo>%</mo>';
    }
    throw new Error(`no command of a formula: \\${name}`);
  }
}

function math(latex, display) {
  const reader = new Reader(latex);
  const row = reader.row();
  if (!reader.done) {
    throw new Error(`a formula has a bracket too many: ${latex}`);
  }
  return `<math${display ? ' display="block"' : ''}>${row}</math>`;
}

/** A formula as MathML; what proves it stands on a line of its own. */
export function formula(latex, display) {
  if (!display) {
    return math(latex, false);
  }
  const lines = latex.split(/\\quad(?=\s*\\text\{check: \})/).map((line) => math(line, true));
  return `<div class="formula" tabindex="0" role="group" aria-label="formula">${lines.join('')}</div>`;
}
