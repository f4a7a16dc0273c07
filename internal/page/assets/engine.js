// Workers that run the engine. Two of them: one reads what is typed and is always
// free; one computes, and is ended at once when something newer is to be computed,
// with another standing ready.

const source = () => document.getElementById('worker').textContent;

// How long an answer may take before the page gives up on it, in milliseconds.
const patience = {read: 20000, compute: 180000};

// unpacked is the compiled engine, made once.
let unpacked;

async function unpack() {
	const element = document.getElementById('engine');
	const text = atob(element.textContent);
	element.textContent = '';
	const packed = new Uint8Array(text.length);
	for (let i = 0; i < text.length; i++) packed[i] = text.charCodeAt(i);
	const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream('gzip'));
	return WebAssembly.compile(await new Response(stream).arrayBuffer());
}

// started is a worker with the engine running in it.
class Started {
	constructor() {
		const url = URL.createObjectURL(new Blob([source()], {type: 'text/javascript'}));
		this.worker = new Worker(url);
		this.open = new Map();
		this.count = 0;
		this.ready = new Promise((resolve, reject) => {
			this.worker.onerror = (event) => { event.preventDefault(); reject(new Error(event.message)); this.fail('The engine stopped. Reload the page.'); };
			this.worker.onmessage = (event) => {
				if (event.data.ready) {
					URL.revokeObjectURL(url);
					resolve();
					return;
				}
				const {id, early, reply} = event.data;
				const asked = this.open.get(id);
				if (!asked) return;
				if (early !== undefined) {
					asked.early(JSON.parse(early));
					return;
				}
				this.open.delete(id);
				asked.done(JSON.parse(reply));
			};
		});
		this.ready.catch(() => {});
		unpacked.then((module) => this.worker.postMessage({module}));
	}

	get busy() { return this.open.size > 0; }

	// ask sends a request; what comes before the reply goes to early. It gives null
	// where the worker was ended before it replied.
	ask(request, wait, early) {
		return new Promise((resolve) => {
			const id = ++this.count;
			const timer = setTimeout(() => this.fail('This takes too long to compute. Take the last answer back.'), wait);
			this.open.set(id, {early, done: (reply) => { clearTimeout(timer); resolve(reply); }});
			const text = JSON.stringify(request);
			this.ready.then(() => this.worker.postMessage({id, request: text}), () => {});
		});
	}

	// fail ends the worker and replies to everything that is open with a fault.
	fail(says) { this.end({faults: [{says}]}); }

	end(reply) {
		this.ended = true;
		this.worker.terminate();
		for (const asked of this.open.values()) asked.done(reply || null);
		this.open.clear();
	}
}

class Engine {
	constructor() {
		unpacked = unpack();
		this.reader = new Started();
		this.computer = new Started();
		this.spare = null;
	}

	get ready() { return unpacked.then(() => this.reader.ready); }

	// read is for what takes no time: one answer, a link, a file.
	read(request) {
		if (this.reader.ended) this.reader = new Started();
		return this.reader.ask(request, patience.read);
	}

	// compute ends whatever is being computed and computes this. It gives null where
	// something newer came.
	compute(request, early) {
		this.supersede();
		return this.computer.ask(request, patience.compute, early);
	}

	// warm brings the engine to its speed while the first label is typed. It is ended
	// when there is something to compute, and nothing waits for it.
	async warm() {
		if (this.computer.busy) return;
		this.prepare();
		this.warming = this.computer;
		await this.computer.ask({do: 'warm'}, patience.compute);
		this.warming = null;
	}

	// computing says whether something is computed that somebody waits for.
	get computing() { return this.computer.busy && this.computer !== this.warming; }

	supersede() {
		if (this.computer.busy) this.computer.end();
		if (!this.computer.ended) return;
		this.computer = this.spare || new Started();
		this.spare = null;
	}

	// prepare has another worker stand ready, for when this one is ended.
	prepare() {
		if (!this.spare) this.spare = new Started();
	}
}
