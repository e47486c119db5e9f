// Prints what the npm packages opening_hours and date-holidays say, for the
// tests in reference_test.go. Usage: node reference.js FOLDER hours|holidays
// with the names or values, one a line, on standard input.
const [folder, what] = process.argv.slice(2);
const lines = require('fs').readFileSync(0, 'utf8').split('\n').filter(x => x);
const stamp = d => [d.getFullYear(), d.getMonth() + 1, d.getDate(), d.getHours(), d.getMinutes()].join(' ');

function hours(value) {
  const OH = require(folder + '/opening_hours');
  const place = { lat: '52.5', lon: '13.0', address: { country_code: 'de', state: 'Berlin' } };
  const end = new Date(2022, 0, 1);
  try {
    const it = new OH(value, place, { locale: 'en' }).getIterator(new Date(2021, 0, 1));
    const out = [];
    for (let d = new Date(2021, 0, 1); d < end; d = it.getDate()) {
      out.push(stamp(d) + ' ' + (it.getState() ? 'open' : it.getUnknown() ? 'unknown' : 'closed'));
      if (!it.advance(end)) break;
    }
    return out.join(';');
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
