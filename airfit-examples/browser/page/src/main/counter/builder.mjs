// Building a reference set: plugs that one knows, measured several times.
import { el } from './elements.mjs';
import { idOf, readingsIn } from './set.mjs';
import { SIZES } from './sizes.mjs';

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
        'data-built': 'built.name',
        value: built.name ?? '',
        placeholder: 'such as: our bench, May',
        oninput: (e) => put(() => ({ name: e.target.value }), 'set-name'),
      }),
    ),
    ...profiles.map((_, i) =>
      profileFields(profiles, i, putProfile, () => {
        put((now) => ({ profiles: now.filter((_, n) => n !== i) }), '');
        place.querySelector('#profile-add').focus();
      }),
    ),
    el(
      'p',
      { class: 'row' },
      el(
        'button',
        {
          type: 'button',
          id: 'profile-add',
          onclick: () => {
            put((now) => ({ profiles: [...now, { name: '', readings: {} }] }), '');
            place.querySelector(`#profile-${profiles.length}-name`).focus();
          },
        },
        'One more profile',
      ),
      el('button', { type: 'button', disabled: profiles.length === 0, onclick: save }, 'Save the set'),
    ),
  );
}

function profileFields(profiles, i, put, remove) {
  const profile = profiles[i];
  const counts = (text) => {
    const count = readingsIn(text ?? '').length;
    return count === 0 ? '' : count === 1 ? '1 reading, one more is needed' : `${count} readings of ${count} plugs`;
  };
  const id = el('input', {
    id: `profile-${i}-id`,
    'data-built': `built.profiles.${i}.id`,
    value: profile.id ?? '',
    placeholder: idOf(profiles, i),
    list: 'profiles',
    oninput: (e) => put(i, () => ({ id: e.target.value }), `profile-${i}-id`),
  });
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
        'data-built': `built.profiles.${i}.name`,
        value: profile.name ?? '',
        placeholder: 'such as: ours, small',
        oninput: (e) => {
          id.placeholder = idOf(
            profiles.map((each, n) => (n === i ? { ...each, name: e.target.value } : each)),
            i,
          );
          put(i, () => ({ name: e.target.value }), `profile-${i}-name`);
        },
      }),
    ),
    el(
      'p',
      { class: 'field' },
      el('label', { for: `profile-${i}-id` }, 'Id, by which parts of the stock name it'),
      id,
    ),
    el(
      'p',
      { class: 'field' },
      el('label', { for: `profile-${i}-source` }, 'Who measured, and when'),
      el('input', {
        id: `profile-${i}-source`,
        'data-built': `built.profiles.${i}.source`,
        value: profile.source ?? '',
        placeholder: 'such as: K., in May',
        oninput: (e) => put(i, () => ({ source: e.target.value }), `profile-${i}-source`),
      }),
    ),
    ...SIZES.map((size) => {
      const id = `profile-${i}-${size.replace(/ /g, '-')}`;
      const said = el('span', { class: 'soft', id: `${id}-count` }, counts(profile.readings?.[size]));
      return el(
        'p',
        { class: 'field' },
        el('label', { for: id }, size),
        el('input', {
          id,
          'data-built': `built.profiles.${i}.readings.${size}`,
          'data-described': said.id,
          'aria-describedby': said.id,
          value: profile.readings?.[size] ?? '',
          placeholder: '11.90 11.92 … mm',
          oninput: (e) => {
            said.textContent = counts(e.target.value);
            put(i, (now) => ({ readings: { ...now.readings, [size]: e.target.value } }), id);
          },
        }),
        said,
      );
    }),
    el(
      'p',
      { class: 'row' },
      el('button', { type: 'button', onclick: remove }, `Remove profile ${i + 1}`),
    ),
  );
}
