// The engine in a worker of its own: a request comes as text and goes back as text.
// The page sends the compiled engine first. Behind this file stands what the Go
// distribution gives to run it (wasm_exec.js).
'use strict';

self.packcheckReady = () => self.postMessage({ready: true});

self.onmessage = async (event) => {
	const {module, id, request} = event.data;
	if (module) {
		const go = new self.Go();
		const instance = await WebAssembly.instantiate(module, go.importObject);
		go.run(instance);
		return;
	}
	const early = (reply) => self.postMessage({id, early: reply});
	self.postMessage({id, reply: self.packcheckServe(request, early)});
};
