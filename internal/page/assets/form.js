// The form: the questions that everybody is asked, those that were answered beyond
// them, and the one that comes next.

class Form {
	// changed is called after every change of what is given; typing while somebody
	// types, and unchanged where that came to the same.
	constructor({changed, typing, unchanged}) {
		Object.assign(this, {onchange: changed, typing, unchanged});
		this.fields = [];
		this.title = document.getElementById('title');
		this.title.addEventListener('change', () => this.changed());
		document.getElementById('form').addEventListener('submit', (event) => event.preventDefault());
	}

	// lay shows fields anew, as the engine gave them.
	lay(list) {
		const title = list.find((f) => f.key === 'title');
		this.title.value = title ? title.answer : '';
		this.fields = list.filter((f) => f.key !== 'title').map((f) => this.field(f));
		this.first = list.filter((f) => f.first).map((f) => f.key);
		document.getElementById('first').replaceChildren(...this.fields.filter((f) => f.data.first).map((f) => f.node));
		document.getElementById('told').replaceChildren(...this.fields.filter((f) => !f.data.first).map((f) => f.node));
		this.pending = null;
		document.getElementById('next').hidden = true;
	}

	field(data) { return new Field(data, this); }

	// given is everything that is known, one field left out where it is just read.
	given(except) {
		const all = {};
		for (const f of this.all()) if (f !== except) Object.assign(all, f.sets);
		const title = this.title.value.replace(/\s+/g, ' ').trim();
		if (title) all.title = title;
		return all;
	}

	// complete counts the questions of everybody that are answered, and all of them.
	complete() {
		const first = this.fields.filter((f) => f.data.first);
		return [first.filter((f) => Object.keys(f.sets).length > 0).length, first.length];
	}

	all() { return this.pending ? [...this.fields, this.pending] : this.fields; }

	passed() { return [...this.gone || [], ...this.all().filter((f) => f.passed).map((f) => f.key)]; }

	changed(field) {
		if (field && field === this.pending && field.passed) {
			(this.gone = this.gone || []).push(field.key);
			this.pending = null;
		}
		notice([], 'came');
		this.onchange();
	}

	// chosen is called when an answer was tapped.
	chosen(field) { if (field === this.pending) this.onward(field); }

	// onward goes to the next question: the next empty one of the first, or the one
	// that the engine thinks the most useful.
	onward(field) {
		if (field === this.pending || !this.pending && !this.fields.includes(field)) {
			this.keep();
			this.wanted = true;
			return;
		}
		const at = this.fields.indexOf(field);
		const next = this.fields.slice(at + 1).find((f) => f.input.value === '' && !f.passed);
		if (next) next.input.focus();
		else if (this.pending) this.pending.input.focus();
		else this.wanted = true;
	}

	// keep moves an answered next question up to what is known.
	keep() {
		const f = this.pending;
		if (!f || f.input.value.trim() === '') return;
		this.fields.push(f);
		this.pending = null;
		document.getElementById('told').append(f.node);
	}

	// asks is the question of a key in words, of a field or of one that is left.
	asks(key) {
		const found = [...this.all().map((f) => f.data), ...this.left || []].find((q) => q.key === key);
		return found ? found.asks : '';
	}

	// bring puts the question of a key on the screen, ready to be answered.
	bring(key) {
		let field = this.all().find((f) => f.key === key);
		const question = (this.left || []).find((q) => q.key === key);
		if (!field && question) {
			this.keep();
			this.show(question);
			field = this.pending;
			document.getElementById('next').hidden = false;
		}
		if (!field) return;
		field.node.scrollIntoView({block: 'center'});
		field.input.focus({preventScroll: true});
	}

	// offer shows the questions that are left, the most useful first. One that
	// somebody is about to answer stays where it is.
	offer(list) {
		this.left = list || [];
		const rest = (list || []).filter((q) => !this.first.includes(q.key) && !this.all().some((f) => f.key === q.key && f !== this.pending));
		const first = (list || []).find((q) => this.first.includes(q.key));
		for (const f of this.fields) f.node.classList.toggle('useful', Boolean(first && list[0] === first && f.key === first.key && f.input.value === ''));
		if (this.pending && Object.keys(this.pending.sets).length > 0 && document.activeElement !== this.pending.input) this.keep();
		const busy = this.pending && (this.pending.input.value !== '' || document.activeElement === this.pending.input);
		if (!busy && (!this.pending || !rest[0] || this.pending.key !== rest[0].key)) this.show(rest[0]);
		this.others(rest.filter((q) => !this.pending || q.key !== this.pending.key));
		document.getElementById('next').hidden = !this.pending && rest.length === 0;
	}

	show(question) {
		this.pending = question ? this.field(question) : null;
		document.querySelector('#next > div').replaceChildren(...this.pending ? [this.pending.node] : []);
		if (this.pending && this.wanted) this.pending.input.focus();
		this.wanted = false;
	}

	others(list) {
		const items = list.map((q) => {
			const button = el('button', {type: 'button', class: 'plain', 'data-key': q.key}, q.asks);
			button.addEventListener('click', () => {
				this.keep();
				this.wanted = true;
				this.show(q);
				button.parentNode.remove();
			});
			return el('li', {}, button);
		});
		const list2 = document.querySelector('#others ul');
		if (!list2.contains(document.activeElement)) list2.replaceChildren(...items);
		document.getElementById('others').hidden = list.length === 0;
	}

	// blame shows faults beside the fields that they belong to, and returns the rest.
	blame(faults) {
		for (const f of this.all()) if (f.blamed) f.say('');
		const rest = [];
		for (const fault of faults) {
			const owner = this.all().find((f) => fault.key && (f.key === fault.key || fault.key in f.sets));
			if (owner) owner.say(fault.says, true);
			else rest.push(fault);
		}
		return rest;
	}
}
