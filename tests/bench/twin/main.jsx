// What Perchlight shows first of a chick, in the usual stack: the next feed with its countdown, the level, the day,
// what is noted most, whom to call, and the weight chart. Records are JSON in localStorage; nothing is judged.
import { StrictMode, useEffect, useState } from 'react';
import { createRoot } from 'react-dom/client';
import { CartesianGrid, Line, LineChart, ReferenceLine, ResponsiveContainer, Tooltip, XAxis, YAxis } from 'recharts';

const KEY = 'twin/journal';
const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

const made = () => {
  const today = new Date().setHours(0, 0, 0, 0);
  return {
    name: 'Ember',
    feeds: [['Morning', 7, 60], ['Midday', 14, 40], ['Bedtime', 21, 60]],
    contacts: [['Call the breeder', 'Example breeder', '+1 555 0100'], ['Call the vet', 'Example vet', '+1 555 0102']],
    noted: [],
    weights: Array.from({ length: 21 }, (_, day) => ({ at: today - (20 - day) * DAY_MS, g: 1040 - day * 2 + (day % 3) * 3 })),
  };
};

const read = () => {
  const text = localStorage.getItem(KEY);
  if (text !== null) {
    return JSON.parse(text);
  }
  const journal = made();
  localStorage.setItem(KEY, JSON.stringify(journal));
  return journal;
};

const nextFeed = (feeds, now) => {
  const at = (day, hour) => new Date(now).setHours(hour + day * 24, 0, 0, 0);
  const all = [0, 1].flatMap((day) => feeds.map(([name, hour, ml]) => ({ name, ml, at: at(day, hour) })));
  return all.find((feed) => feed.at > now);
};

const span = (minutes) => `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
const day = new Intl.DateTimeFormat(undefined, { day: 'numeric', month: 'short' });

const Weight = ({ weights }) => (
  <figure className="group">
    <figcaption>
      {weights.at(-1).g} g today, {weights.at(-2).g - weights.at(-1).g} g less than yesterday.
    </figcaption>
    <ResponsiveContainer width="100%" height={220}>
      <LineChart data={weights}>
        <CartesianGrid />
        <XAxis dataKey="at" tickFormatter={(at) => day.format(at)} />
        <YAxis domain={['dataMin - 20', 'dataMax + 20']} unit=" g" />
        <Tooltip labelFormatter={(at) => day.format(at)} />
        <ReferenceLine y={weights[0].g} label="handover" />
        <Line dataKey="g" isAnimationActive={false} />
      </LineChart>
    </ResponsiveContainer>
  </figure>
);

const App = () => {
  const [journal, setJournal] = useState(read);
  const [now, setNow] = useState(Date.now);
  useEffect(() => {
    const clock = setInterval(() => setNow(Date.now()), 1000);
    return () => clearInterval(clock);
  }, []);
  useEffect(() => localStorage.setItem(KEY, JSON.stringify(journal)), [journal]);
  const next = nextFeed(journal.feeds, now);
  const note = (what) => setJournal({ ...journal, noted: [...journal.noted, { what, at: now }] });
  return (
    <div id="app">
      <header className="head">
        <p className="top-bar__name">{journal.name}</p>
        <a className="help" href="#/help">Help</a>
      </header>
      <main className="main">
        <h1 className="only-read">Now</h1>
        <section className="next-feed">
          <h2>{next.name} feed at {new Date(next.at).getHours()}:00</h2>
          <p className="next-feed__countdown">{span(Math.ceil((next.at - now) / MINUTE_MS))}</p>
          <p>{next.ml} ml. Nothing to feed before then.</p>
        </section>
        <p className="lamp">Settled</p>
        <ol>
          {journal.feeds.map(([name, hour, ml]) => (
            <li key={hour}>{hour}:00 {name}, {ml} ml</li>
          ))}
        </ol>
        <nav className="small-acts">
          {['Weigh', 'Crop', 'Droppings', 'Solids'].map((word) => (
            <button type="button" className="button" key={word} onClick={() => note(word)}>{word}</button>
          ))}
        </nav>
        <div className="calls">
          {journal.contacts.map(([who, name, number]) => (
            <a className="call" key={number} href={`tel:${number.replaceAll(' ', '')}`}>{who} {name} {number}</a>
          ))}
        </div>
        <Weight weights={journal.weights} />
        <div className="dock">
          <button type="button" className="button" id="log" onClick={() => note('feed')}>Log a feed</button>
        </div>
      </main>
    </div>
  );
};

createRoot(document.getElementById('root')).render(<StrictMode><App /></StrictMode>);
navigator.serviceWorker?.register('./sw.js');
