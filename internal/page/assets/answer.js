// The answer: parts of the report as the engine writes them, set in place. What did
// not change is left alone, what was unfolded or ticked stays so.

class Answer {
	constructor(form) {
		this.form = form;
		this.turn = 0;
		this.tried = [];
		this.wanted = ''; // the mark of a way out that came with a link and is to be tried
		this.beside = new Beside(form, this);
		this.shown = {};
		this.settled = Promise.resolve();
		this.state = document.getElementById('state');
		this.trying = document.getElementById('trying');
		this.trying.querySelector('button').addEventListener('click', () => this.back());
		document.getElementById('untry').addEventListener('click', () => this.back());
		for (const kind of ['wheel', 'pointerdown', 'keydown']) window.addEventListener(kind, () => { this.coming = false; }, {passive: true});
		for (const id of ['skip', 'bar']) {
			document.getElementById(id).addEventListener('click', (event) => {
				event.preventDefault(); // the fragment is for setups
				this.goTo('auto');
			});
		}
	}

	// renew computes what is given now: first from few vehicles, then from many.
	renew() {
		const turn = ++this.turn;
		const held = this.held;
		this.held = null;
		this.settled = this.compute(turn).then(() => turn === this.turn && this.beside.renew(this.request));
		if (held) held();
		return this.settled;
	}

	// hold ends what is being computed: somebody types, and it may soon be another
	// question. resume takes it up again where it is not.
	hold() {
		if (!engine.computing) return;
		engine.supersede();
		this.turn++;
		this.settled = new Promise((resolve) => { this.held = resolve; });
	}

	resume() { if (this.held) this.renew(); }

	// besides computes what stands beside the answer, once that is whole.
	besides() {
		const turn = this.turn;
		this.settled = this.settled.then(() => turn === this.turn && this.beside.renew(this.request));
		return this.settled;
	}

	async compute(turn) {
		const request = {do: 'assess', given: this.form.given(), passed: this.form.passed(), tried: this.onTrial()};
		this.request = null;
		document.getElementById('handed').hidden = true; // it is of the answer before
		this.note('Computing ...');
		const reply = await engine.compute(request, (early) => {
			if (turn !== this.turn) return;
			this.show(early);
			engine.prepare();
		});
		if (turn !== this.turn || !reply) return;
		this.show(reply);
		if (reply.parts) this.request = request;
		if (this.wanted && reply.parts) await this.arrive(reply.ways || []);
	}

	// arrive tries the way out that a link asked for. Its words are the engine's own.
	async arrive(list) {
		const way = list.find((w) => w.mark === this.wanted);
		this.wanted = '';
		if (way) await this.attempt(way);
		else notice(['The link shows a way out that is not among those found here. What you see is how it stands.'], 'came');
	}

	// trial is what a link to the way out that is tried holds: how it stands without, with
	// what was told in between, and the mark of the way. One tried upon another has none.
	trial() {
		if (this.tried.length !== 1) return undefined;
		const [{given, way}] = this.tried;
		const base = this.form.given();
		for (const key of Object.keys(way.sets)) {
			if (given[key] === undefined) delete base[key];
			else base[key] = given[key];
		}
		return {given: base, way: way.mark};
	}

	// text is the answer in a form to hand on.
	async text(format) {
		let last;
		do {
			last = this.settled;
			await last;
		} while (last !== this.settled);
		if (!this.request) return {faults: [{says: 'There is no answer to hand on yet: what is printed on the battery?'}]};
		return engine.compute({...this.request, do: 'write', format, packs: this.beside.compared});
	}

	// show sets a reply in place; whoever stands on a button of it stays there.
	show(reply) {
		const place = document.activeElement && document.activeElement.closest('#report [data-part]');
		const held = place && [document.activeElement.tagName, document.activeElement.textContent];
		this.put(reply);
		if (!held || place.contains(document.activeElement)) return;
		const again = [...place.querySelectorAll(held[0])].find((node) => node.textContent === held[1]);
		if (again) again.focus({preventScroll: true});
	}

	put(reply) {
		const faults = this.form.blame(reply.faults || []);
		notice(faults.map((f) => f.says), 'answer');
		this.form.offer(reply.next);
		for (const f of this.form.all()) f.reword((reply.asks || {})[f.key]);
		if (!reply.parts) {
			this.clear();
			this.wanted = '';
			this.note(reply.waits ? 'The answer stands here as soon as the battery is told.' : 'There is no answer to this: see what is marked.');
			return;
		}
		const n = reply.draws.toLocaleString('en');
		const points = Math.ceil(200 * reply.off);
		this.note(reply.draws === drawn ? `Computed for ${n} vehicles: what was not told is another in each.` : `Computed for ${n} vehicles so far, what was not told being another in each: shares of them are good to ${points} in 100 ...`);
		document.querySelectorAll('[data-part]').forEach((place) => this.set(place, reply.parts[place.dataset.part] || ''));
		this.set(document.getElementById('band'), reply.parts.band);
		this.ways(reply.ways || [], !reply.more, reply.level);
		this.measures(reply.measure || []);
		this.tell(reply);
		if (this.coming) this.goTo('instant'); // what stands above has its place by now
		if (!reply.more) this.coming = false;
	}

	goTo(behavior) {
		document.getElementById('answer').scrollIntoView({behavior});
		document.getElementById('answer').focus({preventScroll: true});
	}

	set(place, markup) {
		const key = place.dataset.part || place.id;
		if (this.shown[key] === markup) return;
		this.shown[key] = markup;
		const name = (node) => (node.querySelector('summary') || node.parentNode).textContent;
		const open = new Set([...place.querySelectorAll('details[open]')].map(name));
		const ticked = new Set([...place.querySelectorAll('input:checked')].map(name));
		place.innerHTML = markup;
		for (const d of place.querySelectorAll('details')) d.open = open.has(name(d));
		for (const box of place.querySelectorAll('input')) box.checked = ticked.has(name(box));
	}

	// ways puts a button beside each way out.
	ways(list, whole, level) {
		const place = document.querySelector('[data-part=todo]');
		place.querySelectorAll('.try, .small.later').forEach((node) => node.remove());
		const titles = place.querySelectorAll('section:first-of-type h3');
		list.forEach((way, i) => {
			if (!titles[i]) return;
			const button = el('button', {type: 'button', class: 'try screen'}, 'Show the answer with these fitted', el('span', {class: 'unseen'}, `: ${way.title}`));
			button.addEventListener('click', () => this.attempt(way));
			(titles[i].nextElementSibling && titles[i].nextElementSibling.matches('ul') ? titles[i].nextElementSibling : titles[i]).after(button);
		});
		if (!whole && (level === 'danger' || level === 'fix first')) place.prepend(el('p', {class: 'small later screen'}, list.length ? 'More ways out are being computed ...' : 'Ways out are being computed ...'));
	}

	// measures puts a button beside what is worth looking up, for whoever has.
	measures(keys) {
		const items = document.querySelectorAll('[data-part=ask] li');
		document.querySelectorAll('[data-part=ask] .bring').forEach((node) => node.remove());
		keys.forEach((key, i) => {
			if (!items[i] || !this.form.asks(key)) return;
			const button = el('button', {type: 'button', class: 'bring screen'}, 'Tell it', el('span', {class: 'unseen'}, `: ${this.form.asks(key)}`));
			button.addEventListener('click', () => this.form.bring(key));
			items[i].append(button);
		});
	}

	// attempt applies a way out; back takes it off again.
	async attempt(way) {
		const before = this.form.given();
		const given = {...before};
		for (const [key, text] of Object.entries(way.sets)) {
			if (text === '') delete given[key];
			else given[key] = text;
		}
		this.tried.push({given: before, way, word: this.verdict});
		await this.take(given);
	}

	async back() {
		const last = this.tried.pop();
		if (last) await this.take(last.given);
	}

	async take(given) {
		const reply = await engine.read({do: 'fields', given});
		if (!reply) return;
		if (reply.faults) {
			notice(reply.faults.map((f) => f.says), 'deed');
			return;
		}
		this.form.lay(reply.fields);
		this.banner();
		this.goTo('instant');
		this.coming = true;
		await this.renew();
	}

	banner() {
		const last = this.tried[this.tried.length - 1];
		this.trying.hidden = !last;
		this.trying.querySelector('p').textContent = last ? `Tried only, not how it stands: ${last.way.title}` : '';
	}

	// onTrial is what has to be fitted for the answer that is shown, and what it is
	// without: that is known as long as nothing else was told in between.
	onTrial() {
		if (!this.tried.length) return undefined;
		const [first] = this.tried;
		const set = new Set(this.tried.flatMap((t) => Object.keys(t.way.sets)));
		const rest = (given) => JSON.stringify(Object.entries(given).filter(([key]) => !set.has(key)).sort());
		return {steps: this.tried.flatMap((t) => t.way.steps || []), today: rest(first.given) === rest(this.form.given()) ? first.word : ''};
	}

	note(text) { this.state.textContent = text; }

	clear() {
		for (const place of document.querySelectorAll('[data-part]')) if (place.dataset.part !== 'safety') this.set(place, '');
		this.set(document.getElementById('band'), '');
		document.getElementById('tell').hidden = true;
		this.fold();
		this.word = '';
	}

	// tell says a new verdict once, on the bar below and to whoever listens.
	tell(reply) {
		const bar = document.getElementById('tell');
		bar.hidden = false;
		bar.className = `tell screen ${this.tried.length ? 'tried' : document.querySelector('#band header').classList[1]}`;
		document.getElementById('untry').hidden = !this.tried.length;
		const [told, asked] = this.form.complete();
		bar.querySelector('b').textContent = this.tried.length ? reply.few : `${reply.few}. ${told} of ${asked} told`;
		this.verdict = reply.word;
		this.fold();
		const words = `${reply.few}. ${document.querySelector('#band .verdict').textContent}`;
		if (words === this.word) return;
		this.word = words;
		document.getElementById('spoken').textContent = words;
	}

	// fold leaves out what has nothing folded in it.
	fold() {
		for (const d of document.querySelectorAll('.fold')) d.hidden = !d.querySelector('section');
	}
}
