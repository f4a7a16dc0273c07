// Other batteries beside the one that is asked about.

class Beside {
	constructor(form, answer) {
		Object.assign(this, {form, answer, shown: '', compared: []});
		this.section = document.getElementById('beside');
		this.state = document.getElementById('beside-state');
		this.columns = document.getElementById('columns');
		this.entries = [1, 2, 3].map((n) => {
			const id = `beside-${n}`;
			const input = el('input', {id, type: 'text', placeholder: 'for example 12 V 7 Ah SLA', 'aria-describedby': `${id}-fault`, autocomplete: 'off', autocapitalize: 'off', spellcheck: 'false', maxlength: '500'});
			const fault = el('p', {class: 'fault', id: `${id}-fault`, hidden: true});
			input.addEventListener('change', () => answer.besides());
			this.section.querySelector('div').append(el('div', {class: 'pair'}, el('label', {for: id}, `What is printed on battery ${'BCD'[n - 1]}`), input), fault);
			return {input, fault};
		});
	}

	// lay shows the batteries that came with a link, and none where none came.
	lay(packs) { this.entries.forEach((e, i) => { e.input.value = packs[i] || ''; }); }

	// packs are those that can be read, as far as that is known.
	packs() { return this.entries.filter((e) => e.fault.hidden).map((e) => e.input.value.trim()).filter((text) => text !== ''); }

	// renew sets the batteries beside the one of an answer, which is whole by now.
	async renew(request) {
		this.section.hidden = !request;
		const told = this.entries.filter((e) => e.input.value.trim() !== '');
		for (const e of this.entries) this.say(e, '');
		this.compared = [];
		if (!request || told.length === 0) {
			this.show('', '');
			return;
		}
		this.state.textContent = 'Computing ...';
		const packs = told.map((e) => e.input.value.trim());
		const reply = await engine.compute({do: 'compare', given: request.given, packs});
		if (!reply) return;
		if (reply.text) this.compared = packs;
		const rest = [];
		for (const f of reply.faults || []) {
			if (told[f.key]) this.say(told[f.key], f.says);
			else rest.push(f.says);
		}
		this.show(reply.text || '', rest.join(' '));
	}

	say(entry, text) {
		entry.fault.textContent = text;
		entry.fault.hidden = text === '';
		entry.input.setAttribute('aria-invalid', String(text !== ''));
	}

	show(markup, text) {
		this.state.textContent = text;
		if (markup === this.shown) return;
		this.shown = markup;
		this.columns.innerHTML = markup;
	}
}
