// Questions as fields. A field keeps the text that was typed and the keys that it
// fills in; what a text means is said by the engine alone.

const el = (tag, attributes = {}, ...children) => {
	const node = document.createElement(tag);
	for (const [name, value] of Object.entries(attributes)) {
		if (value === false || value === undefined || value === '') continue;
		node.setAttribute(name, value === true ? '' : value);
	}
	node.append(...children.filter((c) => c !== null));
	return node;
};

let fieldCount = 0;

// today is the day here; a month that is answered is that of the nearest winter.
const today = () => new Date(Date.now() - new Date().getTimezoneOffset() * 60000).toISOString().slice(0, 10);

class Field {
	// changed is called when the keys that it fills in are others than before; passed
	// when somebody does not know.
	constructor(data, form) {
		Object.assign(this, {data, form, key: data.key, text: data.answer || '', sets: data.sets || {}, passed: false, turn: 0});
		this.build(`f${++fieldCount}`);
	}

	build(id) {
		const d = this.data;
		this.input = el('input', {id, type: 'text', value: this.text, placeholder: d.example ? `for example ${d.example}` : '', 'aria-describedby': `${id}-why ${id}-fault ${id}-reads`, autocomplete: 'off', autocapitalize: 'off', spellcheck: 'false', enterkeyhint: 'next', maxlength: '500'});
		this.reads = el('p', {class: 'small', id: `${id}-reads`, hidden: true});
		this.fault = el('p', {class: 'fault', id: `${id}-fault`, hidden: true});
		this.unknown = el('button', {type: 'button', class: 'plain', 'aria-pressed': 'false'}, 'Don\'t know', el('span', {class: 'unseen'}, `: ${d.asks}`));
		this.why = el('p', {class: 'small', id: `${id}-why`, hidden: !d.why}, d.why ? `Asked because: ${d.why}.` : '');
		const help = [];
		if (d.how) help.push(el('p', {}, d.how));
		if (d.usual) help.push(el('p', {}, `Left empty: ${d.usual}.`));
		this.node = el('div', {class: 'field', 'data-key': this.key},
			el('label', {for: id}, d.asks), this.why,
			this.input, this.fault, this.reads, this.chips(d),
			el('div', {class: 'foot'},
				help.length ? el('details', {class: 'help'}, el('summary', {}, 'How to find out', el('span', {class: 'unseen'}, `: ${d.asks}`)), ...help) : null,
				this.unknown));
		this.input.addEventListener('input', () => this.typed());
		this.input.addEventListener('change', () => this.settle());
		this.input.addEventListener('keydown', (event) => {
			if (event.key !== 'Enter') return;
			event.preventDefault();
			this.settle().then(() => this.form.onward(this));
		});
		this.unknown.addEventListener('click', () => this.pass());
		this.means(d.reads);
		this.mark();
	}

	// reword asks the same in other words: what else was told says of which battery it is.
	reword(asks) {
		if (!asks || asks === this.data.asks) return;
		this.data.asks = asks;
		this.node.querySelector('label').textContent = asks;
		for (const hidden of this.node.querySelectorAll('.foot .unseen')) hidden.textContent = `: ${asks}`;
		if (this.group) this.group.setAttribute('aria-label', `Answers: ${asks}`);
	}

	chips(d) {
		if (!d.choices) return null;
		const group = el('div', {class: 'chips', role: 'group', 'aria-label': `Answers: ${d.asks}`});
		for (const choice of d.choices) {
			const chip = el('button', {type: 'button', 'aria-pressed': 'false', 'data-value': choice.value}, choice.says);
			chip.addEventListener('click', () => { this.put(choice.says); this.settle().then(() => this.form.chosen(this)); });
			group.append(chip);
		}
		this.group = group;
		return group;
	}

	put(text) {
		this.input.value = text;
		this.text = text;
		this.passed = false;
	}

	// typed waits for a pause: nothing is read or said at every key.
	typed() {
		this.text = this.input.value;
		this.passed = false;
		this.mark();
		this.form.typing();
		clearTimeout(this.timer);
		clearTimeout(this.slow);
		this.timer = setTimeout(() => this.read(false), 350);
		this.slow = setTimeout(() => this.read(true), 1300);
	}

	settle() {
		clearTimeout(this.timer);
		clearTimeout(this.slow);
		return this.read(true);
	}

	// read has the engine say what the text means. A fault is shown only when the
	// typing has come to rest.
	async read(aloud) {
		const turn = ++this.turn;
		const text = this.input.value.trim();
		if (text === '' && this.passed) return;
		const reply = text === '' ? {} : await engine.read({do: 'fill', key: this.key, text, given: this.form.given(this), today: today()});
		if (turn !== this.turn || !reply) return;
		const faults = reply.faults || [];
		if (faults.length === 0 || aloud) this.say(faults.map((f) => f.says).join(' '));
		const before = JSON.stringify([this.sets, this.passed]);
		this.sets = faults.length ? {} : reply.sets || {};
		this.means(faults.length ? '' : reply.text);
		this.passed = faults.length === 0 && text !== '' && Object.keys(this.sets).length === 0;
		this.mark();
		if (JSON.stringify([this.sets, this.passed]) !== before) this.form.changed(this);
		else this.form.unchanged();
	}

	// means shows what a label was understood to mean.
	means(text) {
		this.meaning = text || '';
		this.reads.textContent = text ? `Read as: ${text}.` : '';
		this.reads.hidden = !text;
	}

	say(text, blamed) {
		this.blamed = Boolean(blamed && text);
		this.fault.textContent = text;
		this.fault.hidden = text === '';
		this.input.setAttribute('aria-invalid', String(text !== ''));
	}

	pass() {
		this.put('');
		this.turn++;
		clearTimeout(this.timer);
		clearTimeout(this.slow);
		this.sets = {};
		this.say('');
		this.means('');
		this.passed = true;
		this.mark();
		this.form.changed(this);
		this.form.onward(this);
	}

	mark() {
		this.unknown.setAttribute('aria-pressed', String(this.passed));
		this.node.classList.toggle('known', Object.keys(this.sets).length > 0);
		if (!this.group) return;
		for (const chip of this.group.children) {
			chip.setAttribute('aria-pressed', String(this.text !== '' && ([this.text, this.meaning].includes(chip.textContent) || chip.dataset.value === (this.sets[this.key] || this.text))));
		}
	}
}
