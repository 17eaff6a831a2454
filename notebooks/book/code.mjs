// Colours of code.
import hljs from 'highlight.js/lib/core';
import java from 'highlight.js/lib/languages/java';
import json from 'highlight.js/lib/languages/json';
import kotlin from 'highlight.js/lib/languages/kotlin';
import typescript from 'highlight.js/lib/languages/typescript';
import xml from 'highlight.js/lib/languages/xml';

/** By the word behind the fence of a block. */
const LANGUAGES = { java, json, kotlin, ts: typescript, xml, html: xml };

Object.entries(LANGUAGES).forEach(([name, language]) => hljs.registerLanguage(name, language));

/** The HTML of code, or undefined where the language is none of these. */
export function highlighted(code, language) {
  return Object.hasOwn(LANGUAGES, language ?? '') ? hljs.highlight(code, { language }).value : undefined;
}
