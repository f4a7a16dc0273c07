// What the page hands on: a link, a text for a forum, the setup file, paper.

function hand(form, answer) {
	const box = document.getElementById('handed');
	const area = document.getElementById('handed-text');
	const file = document.getElementById('file');

	const offer = (label, text) => {
		box.hidden = false;
		box.querySelector('label').textContent = label;
		area.value = text;
		copy.textContent = 'Copy';
		area.focus();
		area.select();
	};
	const save = (name, text, type) => {
		const url = URL.createObjectURL(new Blob([text], {type}));
		const a = el('a', {href: url, download: name});
		a.click();
		setTimeout(() => URL.revokeObjectURL(url), 10000);
	};
	const got = (reply) => {
		if (!reply) return '';
		notice((reply.faults || []).map((f) => f.says), 'deed');
		return reply.text || '';
	};
	const forum = async (format, label) => {
		const text = got(await answer.text(format));
		if (text) offer(label, text);
	};

	const deeds = {
		async link() {
			const trial = answer.trial();
			const text = got(await engine.read({do: 'link', ...(trial || {given: form.given()}), packs: answer.beside.packs()}));
			if (text) offer(trial ? 'This link shows the way out that is tried, and leads back to how it stands' : answer.tried.length ? 'This link holds what is tried, not how it stands' : 'This link holds everything that was told, and nothing else', `${location.href.split('#')[0]}#${text}`);
		},
		markdown: () => forum('markdown', 'Text in Markdown'),
		bbcode: () => forum('bbcode', 'Text in BBCode'),
		async save() {
			const text = got(await engine.read({do: 'save', given: form.given()}));
			if (text) save('setup.toml', text, 'application/toml');
		},
		async json() {
			const text = got(await answer.text('json'));
			if (text) save('answer.json', text, 'application/json');
		},
		open: () => file.click(),
		print: () => window.print(),
		// What was told is gone after a second press alone; whatever else is done takes the first back.
		clear(button) {
			if (button.dataset.sure || Object.keys(form.given()).length === 0) {
				unsure(button);
				return start();
			}
			button.dataset.sure = 'asked';
			button.dataset.was = button.textContent;
			button.textContent = 'Forget all that was told? Press again';
		},
	};
	const unsure = (button) => {
		if (!button.dataset.sure) return;
		delete button.dataset.sure;
		button.textContent = button.dataset.was;
	};
	for (const button of document.querySelectorAll('[data-hand]')) {
		button.addEventListener('click', () => deeds[button.dataset.hand](button));
		button.addEventListener('blur', () => unsure(button));
	}

	// Paper has no folds to open.
	window.addEventListener('beforeprint', () => document.querySelectorAll('.fold').forEach((d) => { d.dataset.was = d.open; d.open = true; }));
	window.addEventListener('afterprint', () => document.querySelectorAll('.fold').forEach((d) => { d.open = d.dataset.was === 'true'; }));

	const copy = box.querySelector('button');
	copy.addEventListener('click', async () => {
		area.select();
		try {
			await navigator.clipboard.writeText(area.value);
		} catch {
			document.execCommand('copy');
		}
		copy.textContent = 'Copied';
	});
	file.addEventListener('change', async () => {
		const chosen = file.files[0];
		file.value = '';
		if (!chosen) return;
		const mebibyte = 1 << 20;
		if (chosen.size > mebibyte) {
			notice(['This file is too large: a setup file has at most 1 MiB.'], 'came');
			return;
		}
		await received({do: 'open', text: await chosen.text()});
	});
}
