// Building a reference set: plugs that one knows, measured several times.
import { el } from './elements.mjs';
import { DIMENSIONS, readingsIn } from './set.mjs';

/** Draws the builder for what was typed so far; `changed` is called with what turns that into what is typed then. */
export function showBuilder(place, built, changed, save) {
  const profiles = built.profiles ?? [];
  // What was typed since this was drawn stands in the state alone, so each change is one of the state.
  const put = (next, typing) => changed((now) => ({ ...now, ...next(now.profiles ?? []) }), typing);
  const putProfile = (i, next, typing) =>
    put((now) => ({ profiles: now.map((each, n) => (n === i ? { ...each, ...next(each) } : each)) }), typing);
  place.replaceChildren(
    el(
      'p',
      { class: 'field' },
      el('label', { for: 'set-name' }, 'Name of the set'),
      el('input', {
        id: 'set-name',
        value: built.name ?? '',
        placeholder: 'such as: our bench, May',
        oninput: (e) => put(() => ({ name: e.target.value }), 'set-name'),
      }),
    ),
    ...profiles.map((profile, i) =>
      profileFields(profile, i, putProfile, () => put((now) => ({ profiles: now.filter((_, n) => n !== i) }), '')),
    ),
    el(
      'p',
      { class: 'row' },
      el(
        'button',
        {
          type: 'button',
          id: 'profile-add',
          onclick: () => put((now) => ({ profiles: [...now, { name: '', readings: {} }] }), ''),
        },
        'One more profile',
      ),
      el('button', { type: 'button', disabled: profiles.length === 0, onclick: save }, 'Save the set'),
    ),
  );
}

function profileFields(profile, i, put, remove) {
  const counts = (text) => {
    const count = readingsIn(text ?? '').length;
    return count === 0 ? '' : count === 1 ? '1 reading, one more is needed' : `${count} readings, one of each plug`;
  };
  return el(
    'fieldset',
    { class: 'grid' },
    el('legend', {}, `Profile ${i + 1}`),
    el(
      'p',
      { class: 'field' },
      el('label', { for: `profile-${i}-name` }, 'Called'),
      el('input', {
        id: `profile-${i}-name`,
        value: profile.name ?? '',
        placeholder: 'such as: ours, small',
        oninput: (e) => put(i, () => ({ name: e.target.value }), `profile-${i}-name`),
      }),
    ),
    el(
      'p',
      { class: 'field' },
      el('label', { for: `profile-${i}-source` }, 'Who measured, and when'),
      el('input', {
        id: `profile-${i}-source`,
        value: profile.source ?? '',
        placeholder: 'such as: K., in May',
        oninput: (e) => put(i, () => ({ source: e.target.value }), `profile-${i}-source`),
      }),
    ),
    ...DIMENSIONS.map((dimension) => {
      const said = el('span', { class: 'soft' }, counts(profile.readings?.[dimension]));
      const id = `profile-${i}-${dimension.replace(/ /g, '-')}`;
      return el(
        'p',
        { class: 'field' },
        el('label', { for: id }, dimension),
        el('input', {
          id,
          value: profile.readings?.[dimension] ?? '',
          placeholder: 'readings behind one another',
          oninput: (e) => {
            said.textContent = counts(e.target.value);
            put(i, (now) => ({ readings: { ...now.readings, [dimension]: e.target.value } }), id);
          },
        }),
        said,
      );
    }),
    el(
      'p',
      { class: 'row' },
      el('button', { type: 'button', onclick: remove, 'aria-label': `Remove profile ${i + 1}` }, 'Remove this profile'),
    ),
  );
}
