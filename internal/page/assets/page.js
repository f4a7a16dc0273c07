// The page: it starts the engine, lays out the questions, and computes whenever
// what is given has changed.

// drawn is how many vehicles a whole answer is drawn from; the engine says it.
let engine, form, answer, drawn;

// notice tells what is wrong and belongs to no field: with what came as a link or a
// file, until something else is told; with a deed that failed; with the answer.
const noticed = {came: [], deed: [], answer: []};

function notice(lines, what) {
	noticed[what] = lines;
	const all = Object.values(noticed).flat();
	const place = document.getElementById('notice');
	place.replaceChildren(...all.slice(0, 20).map((line) => el('p', {}, line)));
	place.hidden = all.length === 0;
}

// received lays out a setup that came as a link or a file. What is not in order is
// told, and what stood in the page stays.
async function received(request) {
	const reply = await engine.read(request);
	if (!reply) return false;
	if (reply.faults) {
		notice(reply.faults.map((f) => f.says), 'came');
		return false;
	}
	notice([], 'came');
	answer.tried = [];
	answer.wanted = reply.way || '';
	answer.banner();
	form.gone = [];
	form.lay(reply.fields);
	answer.beside.lay(reply.packs || []);
	answer.renew();
	return true;
}

// start shows the questions with nothing in them.
async function start() {
	const reply = await engine.read({do: 'begin'});
	if (!reply || reply.faults) return;
	drawn = reply.draws;
	notice([], 'came');
	answer.tried = [];
	answer.wanted = '';
	answer.beside.lay([]);
	answer.banner();
	form.gone = [];
	form.lay(reply.fields);
	answer.renew();
}

const fragment = () => location.hash.slice(1);

async function main() {
	if (!self.WebAssembly || !self.DecompressionStream || !self.Worker) {
		document.getElementById('state').textContent = 'This browser is too old to compute the answer by itself: a newer one, or the command, can.';
		return;
	}
	engine = new Engine();
	form = new Form({changed: () => answer.renew(), typing: () => answer.hold(), unchanged: () => answer.resume()});
	answer = new Answer(form);
	hand(form, answer);
	try {
		await engine.ready;
	} catch {
		document.getElementById('state').textContent = 'The engine cannot be started in this browser. The command does the same.';
		return;
	}
	await start();
	if (fragment()) await received({do: 'unlink', text: fragment()});
	window.addEventListener('hashchange', () => { if (fragment()) received({do: 'unlink', text: fragment()}); });
	document.documentElement.dataset.ready = 'yes';
	answer.settled.then(() => engine.warm());
}

main();
