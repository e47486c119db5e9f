// Prints what the npm packages opening_hours and date-holidays say, for the
// tests in reference_test.go. Usage: node reference.js FOLDER hours DATE/DAYS,…
// or node reference.js FOLDER holidays, with the values or names, one a line,
// on standard input.
const [folder, what, stretches] = process.argv.slice(2);
const lines = require('fs').readFileSync(0, 'utf8').split('\n').filter(x => x);

// hours answers with a letter a day, then what each letter stands for:
// "aab|600-720|600-720,?720-840": minutes of the day, ? unknown, else open.
function hours(value) {
  const OH = require(folder + '/opening_hours');
  const place = { lat: '52.5', lon: '13.0', address: { country_code: 'de', state: 'Berlin' } };
  const names = [], days = [];
  try {
    const oh = new OH(value, place, { locale: 'en' });
    for (const stretch of stretches.split(',')) {
      const [y, m, d, n] = stretch.split(/[-/]/).map(Number);
      for (let i = 0; i < n; i++) {
        // Each day anew: what the iterator passes over between days it may lose.
        const first = new Date(y, m - 1, d + i), end = new Date(y, m - 1, d + i + 1), parts = [];
        const it = oh.getIterator(first);
        for (let from = first; from < end;) {
          const mark = it.getState() ? '' : it.getUnknown() ? '?' : 'closed';
          const to = it.advance(end) && it.getDate() < end ? it.getDate() : end;
          if (mark !== 'closed') parts.push(mark + (from - first) / 6e4 + '-' + (to - first) / 6e4);
          from = to;
        }
        let k = names.indexOf(parts.join(','));
        if (k < 0) k = names.push(parts.join(',')) - 1;
        days.push(String.fromCharCode(k < 26 ? 97 + k : k < 52 ? 65 + k - 26 : 0x100 + k));
      }
    }
    return [days.join(''), ...names].join('|');
  } catch (e) {
    return '!' + String(e).replace(/\s+/g, ' ').slice(0, 200);
  }
}

function holidays(name) {
  const Holidays = require(folder + '/date-holidays');
  const h = new Holidays(...name.split('-'));
  const out = [];
  for (let year = 2024; year <= 2031; year++)
    for (const x of h.getHolidays(year) || [])
      if (x.type === 'public')
        for (let k = 0; k < Math.round((new Date(x.end) - new Date(x.start)) / 864e5); k++)
          out.push(new Date(Date.parse(x.date.slice(0, 10) + 'T00:00Z') + k * 864e5).toISOString().slice(0, 10));
  return out.join(';');
}

for (const line of lines) console.log(what === 'hours' ? hours(line) : holidays(line));
