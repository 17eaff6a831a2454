// Values inside plain objects, by path. Nothing is changed: what differs is a new object, the rest is shared.

/** The value at a path such as "supply.pressure"; undefined where there is none. */
export function at(object, path) {
  let value = object;
  for (const name of steps(path)) {
    if (value === null || typeof value !== 'object' || !Object.hasOwn(value, name)) {
      return undefined;
    }
    value = value[name];
  }
  return value;
}

/** The object with another value at a path. Undefined takes the field away, and what holds nothing then. */
export function withAt(object, path, value) {
  return changed(object ?? {}, steps(path), value) ?? {};
}

function changed(object, [name, ...rest], value) {
  const old = Object.hasOwn(object, name) ? object[name] : undefined;
  const fresh = rest.length === 0 ? value : changed(isObject(old) ? old : {}, rest, value);
  if (Array.isArray(object)) {
    return object.map((each, i) => (i === Number(name) ? fresh : each));
  }
  if (fresh !== undefined) {
    // A field of any name stays a field of its own, "__proto__" too.
    return Object.fromEntries([
      ...Object.entries(object)
        .filter(([key]) => key !== name || old !== undefined)
        .map(([key, each]) => [key, key === name ? fresh : each]),
      ...(old === undefined ? [[name, fresh]] : []),
    ]);
  }
  const left = Object.entries(object).filter(([key]) => key !== name);
  return left.length === 0 ? undefined : Object.fromEntries(left);
}

/** Whether a value has fields or items. */
export function isObject(value) {
  return value !== null && typeof value === 'object';
}

/** The names of a path; the sizes of a plug have blanks in their names, none has a point. */
function steps(path) {
  return Array.isArray(path) ? path : path.split('.');
}
