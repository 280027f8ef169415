import{a as e,c as t,d as n,f as r,i,l as a,n as o,o as s,p as c,r as l,s as u,t as d,u as ee}from"./lesson-board.js";var f=class extends Error{constructor(e,t,n){super(t),this.status=e,this.lesson=n}},p=new URLSearchParams(location.hash.slice(1)),m=p.get(`token`)??``,te=p.get(`lesson`),ne=p.has(`begin`),h=e=>new URLSearchParams(e===null?{token:m,begin:``}:{token:m,lesson:e}).toString(),g=crypto.randomUUID();async function re(e,t={}){let n={Authorization:`Bearer ${m}`};t.body&&(n[`Content-Type`]=`application/json`);let r=await fetch(`/api${e}`,{...t,headers:n,cache:`no-store`});if(r.ok)return r;let i=await r.json().catch(()=>({})),{message:a,hint:o}=i.error??{},s=a?o?`${a}: ${o}`:a:`the desk answered ${r.status}`;throw new f(r.status,s,i.lesson??null)}async function _(e,t){return await(await re(e,t)).json()}var v=e=>JSON.stringify(e),y=e=>`/lessons/${encodeURIComponent(e)}`,b=()=>_(`/lessons`),ie=e=>_(`/folder?path=${encodeURIComponent(e)}`),ae=e=>_(`/lessons`,{method:`POST`,body:v({start:e})}),x=e=>Promise.all([...e??[]].map(async e=>{let t=new Uint8Array(await e.arrayBuffer()),n=``;for(let e=0;e<t.length;e+=8192)n+=String.fromCharCode(...t.subarray(e,e+8192));return{name:e.name,base64:btoa(n)}})),S=e=>_(y(e)),oe=e=>_(y(e),{method:`DELETE`}),se=(e,t)=>_(`${y(e)}/way`,{method:`POST`,body:v(t)}),ce=e=>_(`/position?fen=${encodeURIComponent(e)}`),le=(e,t,n)=>_(`${y(e)}/edits`,{method:`POST`,body:v({version:t,window:g,edit:n})}),ue=(e,t,n)=>_(`${y(e)}/conflict`,{method:`POST`,body:v({version:t,window:g,keep:n})}),de=e=>_(`${y(e)}/study`),fe=e=>_(`${y(e)}/study`,{method:`POST`}),pe=(e,t,n)=>_(`${y(e)}/questions`,{method:`POST`,body:v({place:t,question:n})}),me=(e,t,n)=>_(`${y(e)}/games`,{method:`POST`,body:v({file:t,player:n})}),he=e=>_(`${y(e)}/games`),ge=e=>_(`${y(e)}/games`,{method:`DELETE`}),_e=e=>_(`/weighing`,{method:`POST`,body:v(e)}),ve=()=>_(`/weighing`),ye=()=>_(`/products`),be=(e,t,n,r,i)=>_(`${y(e)}/publish`,{method:`POST`,body:v({path:t,only:n,anyway:r,looks:i})}),xe=e=>_(`${y(e)}/publish`,{method:`DELETE`}),Se=(e,t)=>_(`${y(e)}/report?of=${t}`),Ce=()=>_(`/weighing/report`);function C({name:e,base64:t},n){we(e,Uint8Array.from(atob(t),e=>e.charCodeAt(0)),n)}function we(e,t,n){let r=document.createElement(`a`);r.href=URL.createObjectURL(new Blob([t],{type:n})),r.download=e,r.click(),setTimeout(()=>URL.revokeObjectURL(r.href),1e4)}var Te=e=>_(`${y(e)}/pgn`),Ee=(e,t,n)=>_(`${y(e)}/order?${new URLSearchParams({...t===null?{}:{minutes:String(t)},pauses:String(n)})}`),De=e=>_(`${y(e)}/editions`),Oe=(e,t,n)=>_(`${y(e)}/editions/${t}/news${n===null?``:`?until=${n}`}`),w=()=>_(`/collections`),ke=(e,t,n,r)=>_(`${y(e)}/figures?${new URLSearchParams({place:t,collection:n,of_audience:String(r)}).toString()}`);async function*Ae(e){let t=await re(`${y(e)}/events`);if(!t.body)return;let n=t.body.pipeThrough(new TextDecoderStream).getReader(),r=``;for(;;){let{done:e,value:t}=await n.read();if(e)return;r=(r+t).replaceAll(`\r
`,`
`);for(let e=r.indexOf(`

`);e>=0;e=r.indexOf(`

`)){let t=je(r.slice(0,e));r=r.slice(e+2),t&&(yield t)}}}function je(e){let t=`message`,n=[];for(let r of e.split(`
`))r.startsWith(`event:`)?t=r.slice(6).trim():r.startsWith(`data:`)&&n.push(r.slice(5).trimStart());return n.length?{name:t,data:JSON.parse(n.join(`
`))}:null}var Me=class{constructor(){this.news=null,this.order=[],this.passages=new Map}take(e){this.news=e,e.order&&(this.order=e.order);let t=new Map(e.passages.map(e=>[e.key,e])),n=new Map;for(let[e,r]of this.order){let i=t.get(e)??this.passages.get(e);i&&n.set(e,Ne(i,r))}this.passages=n}get findings(){return[...this.passages.values()].flatMap(({findings:e})=>e)}get sentences(){return[...this.passages.values()].flatMap(({sentences:e})=>e)}};function Ne(e,t){let n=e.findings[0]??e.sentences[0];return!n||n.comment===t?e:{key:e.key,findings:e.findings.map(e=>({...e,comment:t})),sentences:t===null?[]:e.sentences.map(e=>({...e,comment:t}))}}function T(e){return e.san===null?`the start`:`${e.number} ${e.san}`}function E(t){return t.nags.map(t=>e[t]??`$${t}`).concat(t.signs).map((e,t)=>t===0&&/^[!?]/.test(e)?e:`\u202f${e}`).join(``)}var Pe=class{constructor(e){this.lesson=e,this.byId=new Map,this.order=new Map,this.follow=new Map,e.places.forEach((e,t)=>{if(this.byId.set(e.id,e),this.order.set(e.id,t),e.parent===null)return;let n=this.follow.get(e.parent);n?n.push(e):this.follow.set(e.parent,[e])})}children(e){return this.follow.get(e)??[]}parent(e){return e.parent===null?void 0:this.byId.get(e.parent)}before(e){for(let t=e;t;t=this.parent(t)){let e=this.children(t.parent??``).indexOf(t);if(e>0)return e-1}return-1}comment(e){return this.byId.get(e.place)?.[e.where][e.nth]}withFen(e,t){for(let n=e;n;n=this.parent(n))if(n.fen===t)return n}stretches(e=null){let t=[],n=null,r=null;for(let i of this.lesson.places){let a=this.parent(i),o=a&&this.children(a.id)[0];a&&a===r&&o===i||(t.push({key:i.id,depth:i.depth,heading:a?o&&o!==i?{words:`Instead of`,move:T(o)}:{words:`Back to the line after`,move:T(a)}:null,game:a?null:Ie(this.lesson,i.game),passages:[]}),n=null);let s=t[t.length-1];s&&((!n||n.after.length||n.diagram||i.before.length)&&(n={key:i.id,before:Fe(i,`before`),moves:[],after:[],diagram:null},s.passages.push(n)),n.moves.push(i),n.after=Fe(i,`after`),n.diagram=i.diagram===null?null:i,i.id===e&&!n.after.length&&(n.after=[{spot:{place:i.id,where:`after`,nth:0},comment:null}]),r=i)}return t}};function Fe(e,t){return e[t].map((n,r)=>({spot:{place:e.id,where:t,nth:r},comment:n}))}function Ie(e,t){if(e.games.length<2)return``;let n=new Map(e.games[t]?.tags??[]),r=e=>/^[?*]*$/.test(n.get(e)??``)?``:n.get(e)??``,i=[r(`White`),r(`Black`)].filter(Boolean).join(` and `);return[r(`Event`),i].filter(Boolean).join(`, `)||`Part ${t+1}`}function Le(e,t){if(!e)return t;let n=new Map(e.places.map(e=>[e.id,e])),r=t.places.map(e=>{let t=n.get(e.id);return t&&JSON.stringify(t)===JSON.stringify(e)?t:e});return{...t,places:r}}var Re=class extends EventTarget{constructor(...e){super(...e),this.tree=null,this.cursor=``,this.findings=[],this.sentences=[],this.contradictions=[],this.proving={done:0,of:0,complete:!0},this.way=null,this.publishing=null,this.study=null,this.games=null,this.shown=null,this.position=null,this.said=``,this.problem=``,this.unstored=``,this.joined=null,this.unsaved=0,this.writing=new Set,this.stored=-1,this.offline=!1,this.clash=null,this.restudying=0,this.told=new Me,this.queue=Promise.resolve(),this.following=Promise.resolve(),this.known=new Map}get lesson(){return this.tree?.lesson??null}get place(){return this.tree?.byId.get(this.cursor)??null}tell(...e){for(let t of e)this.dispatchEvent(new Event(t))}async open(e){this.take(await S(e)),this.said=this.lesson?.notice??``,this.tell(`status`),this.listen(e)}take(e){let t=this.lesson;if(t&&e.version<t.version)return;let n=this.tree;this.tree=new Pe(Le(t,e)),this.tree.byId.has(this.cursor)||(this.cursor=this.nearest(n)??e.places[0]?.id??``),this.tell(`lesson`),this.go(this.cursor),this.found(),t&&t.version!==e.version&&this.restudy()}nearest(e){let t=e?.byId.get(this.cursor);for(;t&&!this.tree?.byId.has(t.id);)t=e?.parent(t);return t?.id}go(e){this.cursor=e,this.shown&&this.shown.exhibit.place!==e&&(this.shown=null),this.tell(`cursor`),this.look()}show(e,t=-1){this.cursor=e.place;let n=e.evidence?.moves.length??-1;this.shown={exhibit:e,step:Math.max(-1,Math.min(t,n))},this.tell(`cursor`),this.look()}next(e){let{tree:t}=this;if(!t)return;let n=({place:e,comment:n,start:r})=>(t.order.get(e)??0)*1e6+(n===null?0:1+r/1e6+n*.001),r=this.findings.filter(t=>t.outcome===e).sort((e,t)=>n(e)-n(t)),i=this.shown?r.findIndex(({id:e})=>e===this.shown?.exhibit.id):-1,a=t.order.get(this.cursor)??0,o=i>=0?i+1:r.findIndex(({place:e})=>(t.order.get(e)??0)>=a),s=r[Math.max(0,o)%Math.max(1,r.length)];s&&this.show(s)}get fen(){let{shown:e}=this,t=e?.exhibit.evidence;return!e||!t||e.step<0?this.place?.fen??``:t.moves[e.step-1]?.fen??t.fen}async look(){let e=this.fen;if(!e)return;let t=this.known.get(e);if(this.position=t??null,this.tell(`position`),!t)try{let t=await ce(e);this.known.set(e,t),this.known.size>500&&this.known.delete(this.known.keys().next().value??``),e===this.fen&&(this.position=t,this.tell(`position`))}catch(e){this.failed(e)}}waits(e,t){this.writing.has(e)!==t&&(t?this.writing.add(e):this.writing.delete(e),this.tell(`status`))}get allSaved(){return!this.writing.size&&!this.unsaved&&this.stored>=(this.lesson?.version??0)}async settled(){for(let e=50;e>0&&this.lesson&&!this.allSaved;--e)await new Promise(e=>setTimeout(e,100))}edit(e){this.unsaved+=1,this.tell(`status`);let t=this.queue.then(()=>this.send(e)).finally(()=>{--this.unsaved,this.tell(`status`)});return this.queue=t.catch(()=>void 0),t}async send(e){for(;;){let t=this.lesson,n=e();if(!t||!n)return null;try{let e=await le(t.key,t.version,n);return this.offline=!1,this.problem=``,this.take(e.lesson),e}catch(e){if(e instanceof f){if(e.status===409&&e.lesson){this.take(e.lesson);continue}return this.failed(e),null}this.offline=!0,this.tell(`status`),await new Promise(e=>setTimeout(e,1e3))}}}async addLine(e,t=this.cursor,n=!1){let r=await this.edit(()=>({op:`add_line`,place:t,moves:e}));if(!r)return!1;this.joined=r.joins;let i=this.tree?.byId.get(r.at),a=r.joins===null?void 0:this.tree?.byId.get(r.joins);return this.said=i?ze(r.said,i,a,e.length):``,n||this.go(r.at),this.tell(`status`),!0}async change(e,t){let n=await this.edit(()=>e);n&&(this.said=t,this.joined=null,e.op!==`settings`&&e.op!==`take_back`&&this.go(n.at),this.tell(`status`))}async diagram(e){let t=e.diagram===null,n=e.san===null?`at the start`:`after ${T(e)}`;await this.change({op:`diagram`,place:e.id,wanted:t},t?`A diagram stands ${n}.`:`The diagram ${n} is taken away.`)}async step(e){let t=this.lesson;!t||!(e===`undo`?t.undo:t.redo)?(this.said=e===`undo`?`There is nothing to undo.`:`There is nothing to do again.`,this.tell(`status`)):await this.change({op:e},e===`undo`?`Undone.`:`Done again.`)}async write(e,t,n){let r=`refused`;return await this.edit(()=>{let i=this.tree?.comment(e);return this.tree?.byId.has(e.place)?i?.text===t?(r=`written`,null):n===null&&!i?{op:`add_comment`,place:e.place,text:t}:!i||i.text!==n?(this.clash={spot:e,mine:t,theirs:i?.text??``},r=`clash`,this.tell(`status`),null):t.trim()?{op:`change_words`,comment:i.index,text:t}:{op:`remove_comment`,comment:i.index}:(this.failed(Error(`the move that these words belong to was cut elsewhere; copy them to another place`)),null)})?`written`:r}async settle(e){let t=this.clash;this.clash=null,this.tell(`status`,`lesson`),t&&e&&await this.write(t.spot,t.mine,this.tree?.comment(t.spot)?t.theirs:null)}async keep(e){let{lesson:t}=this;if(t){try{this.take(await ue(t.key,t.version,e))}catch(e){e instanceof f&&e.lesson?this.take(e.lesson):this.failed(e)}this.tell(`status`)}}failed(e){this.problem=e instanceof Error?e.message:String(e),this.tell(`status`)}async listen(e){for(;;){try{this.told=new Me;for await(let{name:t,data:n}of Ae(e))await this.heard(e,t,n)}catch(e){if(e instanceof f)return this.offline=!1,this.failed(e)}this.offline=!0,this.tell(`status`),await new Promise(e=>setTimeout(e,1e3));try{this.take(await S(e)),this.offline=!1,this.tell(`status`)}catch{}}}async heard(e,t,n){if(t===`findings`)this.told.take(n),this.found();else if(t===`study`)await this.studied(e,n);else if(t===`followed`)this.follow();else if(t===`publishing`)this.publishing=n,this.tell(`publishing`);else if(t===`saved`){let{version:e,problem:t}=n;this.stored=e,this.unstored=t??``,this.tell(`status`)}else if(t===`lesson`){let{version:t,window:r}=n;r!==g&&t>(this.lesson?.version??0)&&(await this.queue,t>(this.lesson?.version??0)&&this.take(await S(e)))}}async studied(e,t){let{things:n=[],pauses:r=[]}=this.study??{};this.study=t.state===`done`?await de(e):{...t,things:n,pauses:r},this.tell(`study`)}follow(e){let{lesson:t}=this;return t?(this.following=this.following.then(async()=>{try{e&&(await e(t.key),this.problem=``),this.games=await he(t.key),this.tell(`games`,`status`)}catch(e){this.failed(e)}}),this.following):Promise.resolve()}restudy(){this.study?.state===`done`&&(clearTimeout(this.restudying),this.restudying=window.setTimeout(()=>{let{lesson:e}=this;e&&de(e.key).then(e=>{this.study=e,this.tell(`study`)},()=>void 0)},300))}async report(e){let{lesson:t}=this;if(t)try{C(await Se(t.key,e),`text/html`)}catch(e){this.failed(e)}}async beginStudy(){let{lesson:e}=this;if(e)try{this.study=await fe(e.key),this.tell(`study`)}catch(e){this.failed(e)}}found(){let{news:e}=this.told;if(!e||e.version!==this.lesson?.version)return;let{shown:t}=this,n=t&&this.findings.some(({id:e})=>e===t.exhibit.id);if(this.findings=this.told.findings,this.sentences=this.told.sentences,this.contradictions=e.contradictions??[],this.proving={done:e.done,of:e.of,complete:e.complete},this.way=e.way,t&&n){let e=this.findings.find(({id:e})=>e===t.exhibit.id);this.shown=e?{...t,exhibit:e}:null}this.tell(`findings`)}};function ze(e,t,n,r){return n?`${T(t)} reaches the position after ${T(n)}: the lines join.`:e===`branched`?r>1?`A branch leads to ${T(t)} now.`:`${T(t)} begins a branch.`:e===`extended`?r>1?`The line leads to ${T(t)} now.`:`${T(t)} goes on with the line.`:`${T(t)} is in the lesson already.`}function Be(e){let{shown:t}=e;return t?.exhibit.evidence?.moves[t.step-1]??null}var D=class{constructor(e,t,n){this.host=e,this.session=t,this.topics=n,this.draw=()=>this.host.requestUpdate(),e.addController(this)}hostConnected(){for(let e of this.topics)this.session.addEventListener(e,this.draw)}hostDisconnected(){for(let e of this.topics)this.session.removeEventListener(e,this.draw)}},O=new Re,Ve=class extends t{constructor(){super(),this.collections=[],this.toggled=e=>{e.target.open&&w().then(({collections:e})=>this.collections=e.map(({name:e})=>e),e=>O.failed(e))},this.changed=e=>{e.preventDefault();let{lesson:t}=O,n=new FormData(e.currentTarget);if(!t)return;let r=String(n.get(`title`)??``).trim(),i=String(n.get(`side`)??``),a=Number(n.get(`audience`)),o={op:`settings`};r&&r!==t.title&&(o.title=r),(i===`white`||i===`black`)&&i!==t.side&&(o.side=i),a!==t.audience&&(o.audience=a),O.change(o,`Set.`)},new D(this,O,[`lesson`,`findings`])}createRenderRoot(){return this}render(){let{lesson:e}=O;return e?e.folder?n`<details class="about" @toggle=${this.toggled}>
      <summary>About this lesson</summary>
      <form @submit=${this.changed}>
        <label>Title <input name="title" maxlength="500" .value=${e.title} /></label>
        <label>Teaches
          <select name="side">
            ${e.side===null?n`<option value="">neither side</option>`:a}
            <option value="white" ?selected=${e.side===`white`}>White</option>
            <option value="black" ?selected=${e.side===`black`}>Black</option>
          </select></label>
        <label>Players of about <input name="audience" type="number" min="400" max="2900" .value=${String(e.audience)} /></label>
        <button class="plain">set it so</button>
      </form>
      ${Ue(this.collections)}
      ${Ke()} ${qe(e)}
    </details>`:n`<details class="about" @toggle=${this.toggled}><summary>About this lesson</summary>
      <p>${e.name} is a bare PGN file: title, side, audience, diagrams and opinions are kept by a lesson folder. Make one of it; the file stays as it is.</p>
      <form @submit=${Ge}>
        <label>Folder <input name="path" required placeholder="/home/me/my-lesson" /></label>
        <label>Teaches
          <select name="side"><option value="white">White</option><option value="black">Black</option></select></label>
        <label>Players of about <input name="audience" type="number" min="400" max="2900" .value=${String(e.audience)} required /></label>
        <button class="plain">make a lesson of it</button>
      </form>
      ${Ue(this.collections)}${Ke()}</details>`:a}};i([s()],Ve.prototype,`collections`,void 0);var He={sketch:`sketch, the quickest`,normal:`normal`,thorough:`thorough, which takes long`};function Ue(e){let t=O.way;if(!t)return a;let{outside:r,collection:i}=t,o=(e,r)=>n`<label>${e}
      <select name=${r}>
        ${Object.entries(He).map(([e,i])=>n`<option value=${e} ?selected=${e===t[r]}>${i}</option>`)}
      </select></label>`;return n`<form @change=${We}>
    ${o(`Effort of each check`,`effort`)}
    ${o(`Effort of all other searches`,`looking`)}
    ${e.length?n`<label>Games that are counted
          <select name="collection">
            <option value="" ?selected=${i===``}>none</option>
            ${e.map(e=>n`<option value=${e} ?selected=${e===i}>${e}</option>`)}
          </select></label>`:a}
    ${r?n`<label>Searches are answered by
          <select name="outside">
            <option value="" ?selected=${!r.asked}>Lineproof</option>
            <option value="yes" ?selected=${r.asked}>${r.name}</option>
          </select></label>`:a}
  </form>`}async function We(e){let t=O.lesson?.key,n=new FormData(e.currentTarget);if(t!==void 0)try{await se(t,{effort:n.get(`effort`),looking:n.get(`looking`),outside:n.get(`outside`)===`yes`,collection:String(n.get(`collection`)??O.way?.collection??``)}),O.problem=``,O.tell(`status`)}catch(e){O.failed(e)}}async function Ge(e){e.preventDefault();let t=O.lesson?.key,n=new FormData(e.currentTarget);if(t!==void 0){await O.settled();try{let e=await ae({how:`new`,path:String(n.get(`path`)),side:n.get(`side`)===`black`?`black`:`white`,audience:Number(n.get(`audience`)),files:[await Te(t)]});await oe(t),location.hash=h(e.key)}catch(e){O.failed(e)}}}function Ke(){return n`<form @submit=${Je}>
    <label>Add the games of PGN files <input name="files" type="file" multiple accept=".pgn,.txt" required /></label>
    <label><input name="joined" type="checkbox" /> into the lines that are there, where they begin alike</label>
    <button class="plain">add them</button>
  </form>`}function qe({opinions:e}){return e.length?n`<p>Your opinion, which is not checked:</p>
    <ul class="entries">
      ${e.map(({name:e,words:t,move:r})=>n`<li>“${t}” ${r?n`<span class="unread">beside ${r}</span>`:a}
          <button class="plain" @click=${()=>void O.change({op:`take_back`,name:e},`It is checked again.`)}>have it checked</button></li>`)}
    </ul>`:a}async function Je(e){e.preventDefault();let t=e.currentTarget,n=await x(t.querySelector(`input[type=file]`)?.files??null),r=new FormData(t).get(`joined`)!==null,i=r?`What begins as the lesson does stands in its lines; the rest after it.`:`They stand after the rest of the lesson.`;await O.change({op:`import`,files:n,joined:r},i),t.reset()}customElements.define(`desk-about`,Ve);var Ye=class extends t{constructor(...e){super(...e),this.told=``,this.submitted=e=>{e.preventDefault();let{tree:t}=O,n=this.querySelector(`input`)?.value.trim()??``;if(!t||!n)return;let r=t.lesson.places.filter(Xe(n)),i=t.order.get(O.cursor)??0,a=r.find(({id:e})=>(t.order.get(e)??0)>i)??r[0];this.told=a?`${r.indexOf(a)+1} of ${r.length}`:`Nothing in the lesson has that.`,a&&O.go(a.id)}}createRenderRoot(){return this}render(){return n`<form class="typed" role="search" @submit=${this.submitted}>
      <label for="find">Find</label>
      <input id="find" autocomplete="off" spellcheck="false" placeholder="words, Nf3, a FEN …" @input=${()=>this.told=``} />
      <span class="unread" role="status">${this.told}</span>
    </form>`}};i([s()],Ye.prototype,`told`,void 0);function Xe(e){if(/^([1-8pnbrqk]+\/){7}[1-8pnbrqk]+( |$)/i.test(e)){let t=e.split(/\s+/).slice(0,4);return({fen:e})=>t.every((t,n)=>e.split(` `)[n]===t)}let t=e.toLowerCase();return n=>n.san!==null&&(n.san.replace(/[+#]$/,``)===e||T(n)===e)||[...n.before,...n.after].some(({text:e})=>e.replace(/\s+/g,` `).toLowerCase().includes(t))}customElements.define(`desk-find`,Ye);function k(e,t=null,r=!1){let i=e.evidence;if(!i?.moves.length&&!t)return a;let{shown:o}=O,s=o?.exhibit.id===e.id?o.step:-1,c=t??Ze(e);return n`${i?.moves.length?n`<div class="evidence" role="group" aria-label="Evidence, step by step" @keydown=${t=>Qe(t,e,s)}>
          ${i.moves.map((t,r)=>n`<button
                class="move ${r+1===s?`here`:``}"
                aria-current=${r+1===s?`true`:a}
                @click=${()=>O.show(e,r+1)}
              >${$e(i.fen,r)}${t.san}</button> `)}
        </div>`:a}
    <p class="doings">
      ${i?.moves.length?n`<button class="plain" ?disabled=${s<0} @click=${()=>O.show(e,s-1)}>back</button>
            <button
              class="plain"
              ?disabled=${s>=i.moves.length}
              @click=${()=>O.show(e,s<0?1:s+1)}
            >step on</button>`:a}
      ${c?n`<button class="plain" @click=${()=>void O.addLine(c.moves,c.place,r)}>take it into the lesson</button>`:a}
    </p>`}function Ze({place:e,evidence:t}){let n=O.tree?.byId.get(e),r=n&&t?O.tree?.withFen(n,t.fen):void 0;return r&&t?{place:r.id,moves:t.moves.map(({uci:e})=>e)}:null}function Qe(e,t,n){if(e.key===`ArrowRight`)O.show(t,Math.max(1,n+1));else if(e.key===`ArrowLeft`)O.show(t,n-1);else return;e.preventDefault()}function $e(e,t){let[,n=`w`,,,,r=`1`]=e.split(` `),i=t+ +(n===`b`),a=Number(r)+Math.floor(i/2);return i%2==0?`${a}. `:t===0?`${a}... `:``}var et=class extends t{constructor(){super(),this.given=async e=>{e.preventDefault();let t=e.currentTarget,[n]=await x(t.querySelector(`input[type=file]`)?.files??null),r=String(new FormData(t).get(`player`)??``).trim();n&&await O.follow(e=>me(e,n,r))},new D(this,O,[`lesson`,`games`,`cursor`])}createRenderRoot(){return this}connectedCallback(){super.connectedCallback(),O.follow()}render(){let{lesson:e,games:t}=O;return e?n`<section class="todo">
      <h2>Your students’ games</h2>
      ${e.side===null?n`<p class="lead">Say under “About this lesson” which side it teaches; then games can be followed.</p>`:n`<p class="lead">Where did their games leave the lesson, and what did it cost? They are looked at, and not kept.</p>
            <form class="ways" @submit=${this.given}>
              <label>PGN file <input name="file" type="file" accept=".pgn,.txt" required /></label>
              <label>The student <input name="player" autocomplete="off" maxlength="200" placeholder="empty: who had the taught side" /></label>
              <button class="plain">follow them</button>
            </form>`}
      <div aria-live="polite">${t?this.told(t):a}</div>
    </section>`:a}told(e){if(e.state===`none`)return a;let t=n`<p class="doings"><button class="plain" @click=${tt}>forget these games</button></p>`;if(e.state===`running`)return n`<p class="lead">Following: ${e.done} of ${e.of} games are done.</p>${t}`;if(e.state===`failed`)return n`<p class="lead">${e.problem}</p>`;let r=n`<p class="doings"><button class="plain" @click=${()=>void O.report(`games`)}>save this as a report</button></p>`;return n`${e.said.map(e=>n`<p>${e}</p>`)}
      ${e.common.length?n`<h3>Where they left it, and what to add</h3>
            ${e.common.map((e,t)=>this.departure(e,`departure ${t}`))}`:a}
      ${e.games.length?n`<details><summary>Game by game</summary>${e.games.map((e,t)=>this.departure(e,`game ${t}`))}</details>`:a}
      ${r}${t}`}departure({place:e,words:t,evidence:r,add:i},a){let o={id:a,place:e,evidence:r,marks:[]},s=O.tree?.byId.get(e);return n`<article class="thing">
      <p class="words">${t}</p>
      ${s?n`${k(o,i,!0)}
            <p class="doings"><button class="plain" @click=${()=>O.show(o)}>see ${T(s)}</button></p>`:n`<p class="unread">The lesson has this position no more.</p>`}
    </article>`}};function tt(){O.follow(ge)}customElements.define(`desk-games`,et);var A=class extends t{constructor(){super(),this.products=[],this.order=null,this.editions=[],this.news=``,this.folder=``,this.of=``,this.busy=!1,this.seen=null,this.broken=()=>{let e=O.lesson?.key;e!==void 0&&this.trying(async()=>{let{published:t}=await xe(e);O.said=t?`It was done already.`:`Broken off; nothing was written.`})},this.told=e=>{e.preventDefault();let t=O.lesson?.key,n=new FormData(e.currentTarget),r=j(n,`minutes`);t!==void 0&&this.trying(async()=>this.order=await Ee(t,r,n.get(`pauses`)!==null))},this.scripted=()=>{this.order&&we(`script.md`,this.order.script,`text/markdown`)},this.compared=e=>{e.preventDefault();let t=O.lesson?.key,n=new FormData(e.currentTarget),r=j(n,`edition`);t!==void 0&&r!==null&&this.trying(async()=>this.news=(await Oe(t,r,j(n,`until`))).text)},this.saved=()=>{let e=O.lesson?.key;e!==void 0&&this.trying(async()=>{C(await Te(e),`application/vnd.chess-pgn`)})},this.publish=e=>{e.preventDefault();let t=O.lesson?.key,n=new FormData(e.currentTarget),r=n.getAll(`only`).map(String);if(t!==void 0){if(!r.length)return O.failed(Error(`choose at least one thing to publish it as`));this.trying(async()=>{await be(t,String(n.get(`path`)),r,n.get(`anyway`)!==null,at(n))})}},new D(this,O,[`lesson`,`study`,`findings`,`publishing`])}createRenderRoot(){return this}connectedCallback(){super.connectedCallback(),this.ready()}async ready(){try{this.products=(await ye()).products,this.folder=`${(await ie(``)).path.replace(/\/$/,``)}/published`}catch(e){O.failed(e)}}willUpdate(){let e=O.lesson?.key??``,t=O.publishing;t!==this.seen&&(this.seen=t,e===this.of&&t?.published&&this.look(e)),e!==this.of&&(this.of=e,[this.editions,this.news,this.order]=[[],``,null],e&&this.look(e))}async look(e){try{let{editions:t}=await De(e);e===this.of&&(this.editions=t)}catch(e){O.failed(e)}}render(){return O.lesson?n`<section class="todo">
      <h2>Tell it, and hand it on</h2>
      <form class="ways" @submit=${this.told}>
        <label>A talk of <input name="minutes" type="number" min="1" step="any" placeholder="any number of" /> minutes</label>
        <label class="product"><input type="checkbox" name="pauses" /> <span>with the pause points that were found</span></label>
        <button class="plain" ?disabled=${this.busy}>the running order, with times</button>
      </form>
      <p class="doings"><button class="plain" ?disabled=${this.busy} @click=${this.saved}>save the PGN file</button>
        <button class="plain" ?disabled=${this.busy} @click=${()=>void O.report(`proof`)}>save a report of all that was checked</button></p>
      ${this.order?n`${this.order.said.map(e=>n`<p>${e}</p>`)}
            <pre class="script" tabindex="0" aria-label="Script">${rt(this.order.script)}</pre>
            <p class="doings"><button class="plain" @click=${this.scripted}>save the script</button></p>`:a}
      ${this.products.length?this.publishing():a} ${this.editions.length?this.since():a}
    </section>`:a}publishing(){return n`<form class="ways" @submit=${this.publish}>
        <fieldset>
          <legend>Publish it as</legend>
          ${this.products.map(({name:e,summary:t,usual:r})=>n`<label class="product"
              ><input type="checkbox" name="only" value=${e} ?checked=${r} />
              <span>${e}: ${t}</span></label>`)}
        </fieldset>
        ${O.study?.state===`done`?a:n`<p class="unread">For all but ${it(this.products)} the lesson is looked through for pause points first, which takes some minutes once.</p>`}
        ${this.looks()}
        <label>into the folder <input name="path" required .value=${this.folder} /></label>
        <label class="product"><input type="checkbox" name="anyway" /> also where claims fail</label>
        <button class="plain" ?disabled=${this.busy||O.publishing?.state===`running`}>publish</button>
      </form>
      <div role="status">${O.publishing?this.publishingSaid(O.publishing):a}</div>
      ${O.publishing?.state===`running`?n`<p class="doings"><button class="plain" @click=${this.broken}>break it off</button></p>`:a}`}looks(){let e=(e,t,r)=>n`<label>${e} <select name=${t}>${r.map(([e,t])=>n`<option value=${e}>${t}</option>`)}</select></label>`,t=(e,t)=>n`<label class="product"><input type="checkbox" name=${t} /> <span>${e}</span></label>`;return n`<details class="wide looks">
      <summary>How it looks</summary>
      <label>Pictures <input name="width" type="number" min="1" max="16384" placeholder="720" /> pixels wide</label>
      ${e(`Letters of the pieces`,`language`,Object.entries(nt))}
      ${e(`Moves of the handout in`,`notation`,[[`letters`,`letters`],[`figurine`,`figurines`]])}
      ${e(`Paper`,`paper`,[[`a4`,`A4`],[`letter`,`Letter`]])}
      ${e(`Columns`,`columns`,[[``,`as the type asks for`],[`1`,`one`],[`2`,`two`]])}
      ${t(`large type in the handout`,`large`)} ${t(`a video that is higher than wide`,`vertical`)}
      ${t(`captions drawn into the video`,`burn_captions`)} ${t(`every frame of the video in its file`,`constant_rate`)}
      ${e(`Pictures of the video as`,`codec`,[[`h264`,`H.264`],[`av1`,`AV1`]])}
      <label>As a loop, only line <input name="loop" type="number" min="1" placeholder="all of them" /></label>
      <label>A recording under it <input name="voice" placeholder="/home/me/voice.wav" /></label>
      <label>Captions and video to fit into <input name="minutes" type="number" min="1" step="any" placeholder="any number of" /> minutes</label>
      ${t(`captions and video with the pause points that were found`,`pauses`)}
    </details>`}since(){return n`<form class="ways" @submit=${this.compared}>
        <label>What is new since <select name="edition">${[...this.editions].reverse().map(({number:e,words:t})=>n`<option value=${e}>${t}</option>`)}</select></label>
        ${this.editions.length>1?n`<label>up to <select name="until"><option value="">the lesson as it is now</option>${this.editions.map(({number:e,words:t})=>n`<option value=${e}>${t}</option>`)}</select></label>`:a}
        <button class="plain" ?disabled=${this.busy}>say it</button>
      </form>
      ${this.news?n`<pre class="script" tabindex="0" aria-label="What is new">${this.news}</pre>`:a}`}publishingSaid({state:e,what:t,done:r,of:i,problem:o,published:s}){if(e===`running`){let e=t===`step`?`Looking for pause points first`:`At work`;return i?`${e}: ${r} of ${i} ${t}s are done.`:`${e}.`}return e===`failed`?n`<p class="problem">${o}</p>`:s?this.done(s):a}done({folder:e,files:t,empty:r,failing:i,edition:o,notes:s}){return n`<p>${t.length} files lie in ${e}. ${o?`This is ${o}.`:a} ${s.join(` `)}
      ${r.length?`Nothing to show: ${r.join(`, `)}. `:a}
      ${i?`${i} ${i===1?`claim that fails was`:`claims that fail were`} published all the same.`:a}</p>`}async trying(e){this.busy=!0;try{await e(),O.problem=``,O.tell(`status`)}catch(e){O.failed(e)}finally{this.busy=!1}}};i([s()],A.prototype,`products`,void 0),i([s()],A.prototype,`order`,void 0),i([s()],A.prototype,`editions`,void 0),i([s()],A.prototype,`news`,void 0),i([s()],A.prototype,`folder`,void 0),i([s()],A.prototype,`busy`,void 0);var nt={en:`English`,de:`German`,fr:`French`,es:`Spanish`,nl:`Dutch`},rt=e=>e.replace(/^#+ /gm,``).replace(/`([^`\n]*)`/g,`$1`).replace(/\*\*([^*\n]+)\*\*/g,`$1`).replace(/\*([[(][^*\n]*[\])])\*/g,`$1`);function it(e){let t=e.filter(({needs_study:e})=>!e).map(({name:e})=>e);return`${t.slice(0,-1).join(`, `)} and ${t.at(-1)??``}`}function j(e,t){let n=String(e.get(t)??``).trim();return n?Number(n):null}function at(e){let[t,n]=[j(e,`columns`),j(e,`width`)];return{...n===null?{}:{width:n},language:String(e.get(`language`)),notation:e.get(`notation`)===`figurine`?`figurine`:`letters`,paper:e.get(`paper`)===`letter`?`letter`:`a4`,columns:t===1||t===2?t:null,large:e.get(`large`)!==null,vertical:e.get(`vertical`)!==null,burn_captions:e.get(`burn_captions`)!==null,constant_rate:e.get(`constant_rate`)!==null,codec:e.get(`codec`)===`av1`?`av1`:`h264`,loop:j(e,`loop`),voice:String(e.get(`voice`)??``).trim(),minutes:j(e,`minutes`),pauses:e.get(`pauses`)!==null}}customElements.define(`desk-hand-on`,A);var ot=class extends t{constructor(...e){super(...e),this.lessons=null,this.toggled=async e=>{if(e.target.open)try{this.lessons=(await b()).lessons}catch(e){O.failed(e)}}}createRenderRoot(){return this}render(){return O.lesson?n`<details class="about" @toggle=${this.toggled}>
      <summary>Other lessons</summary>
      ${this.lessons?st(this.lessons.filter(({key:e})=>e!==O.lesson?.key)):a}
      <p class="doings"><button class="plain" @click=${()=>void ct(null)}>begin or open another</button>
        <button class="plain" @click=${()=>void lt()}>take this one off the desk</button></p>
    </details>`:a}};i([s()],ot.prototype,`lessons`,void 0);function st(e){return e.length?n`<ul class="entries">
    ${e.map(({key:e,title:t,name:r})=>n`<li><button class="plain" @click=${()=>void ct(e)}>${t}</button>
        <span class="unread">${r}</span></li>`)}
  </ul>`:n`<p class="unread">No other lesson is on the desk.</p>`}async function ct(e){await O.settled(),location.hash=h(e)}async function lt(){let{lesson:e}=O;if(e){await O.settled();try{await oe(e.key),location.hash=h(null)}catch(e){O.failed(e)}}}customElements.define(`desk-others`,ot);var ut=500,M=class extends t{constructor(...e){super(...e),this.lessons=[],this.collections=[],this.outside=null,this.weighed=null,this.timer=0,this.asked=e=>{e.preventDefault();let t=new FormData(e.currentTarget);this.trying(async()=>{await _e({moves:String(t.get(`moves`)).split(`
`).filter(e=>e.trim()),lessons:t.getAll(`lessons`).map(String),audience:Number(t.get(`audience`)),collection:String(t.get(`collection`)??``),outside:t.get(`outside`)!==null}),O.problem=``,O.tell(`status`),await this.look()})}}createRenderRoot(){return this}connectedCallback(){super.connectedCallback(),this.trying(async()=>{({lessons:this.lessons,outside:this.outside}=await b()),this.collections=(await w()).collections.map(({name:e})=>e),await this.look()})}disconnectedCallback(){clearTimeout(this.timer),super.disconnectedCallback()}render(){return n`<section>
      <h2>Weigh openings</h2>
      <p>How often would each come up, how much is there to learn, and how does one stand then? For players of one rating, side by side.</p>
      <form class="ways" @submit=${this.asked}>
        <label class="wide">Their moves, an opening a line
          <textarea name="moves" rows="3" spellcheck="false" placeholder="1. e4 e5 2. Nc3 Nf6 3. f4"></textarea></label>
        ${this.lessons.map(({key:e,title:t})=>n`<label class="product"><input type="checkbox" name="lessons" value=${e} /> <span>${t}</span></label>`)}
        <label>Players of about <input name="audience" type="number" min="400" max="2900" value="1500" required /></label>
        ${this.collections.length?n`<label>Games of <select name="collection"><option value="">no collection</option>${this.collections.map(e=>n`<option>${e}</option>`)}</select></label>`:a}
        ${this.outside===null?a:n`<label class="product"><input type="checkbox" name="outside" checked /> <span>${this.outside} answers the searches</span></label>`}
        <button class="plain" ?disabled=${this.weighed?.state===`running`}>weigh them</button>
      </form>
      <div aria-live="polite">${this.weighed?dt(this.weighed):a}</div>
      ${this.weighed?.state===`done`?n`<p class="doings"><button class="plain" @click=${()=>void this.trying(async()=>C(await Ce(),`text/html`))}>save this as a report</button></p>`:a}
    </section>`}async look(){clearTimeout(this.timer),this.weighed=await ve(),this.weighed.state===`running`&&this.isConnected&&(this.timer=window.setTimeout(()=>void this.trying(()=>this.look()),ut))}async trying(e){try{await e()}catch(e){O.failed(e)}}};i([s()],M.prototype,`lessons`,void 0),i([s()],M.prototype,`collections`,void 0),i([s()],M.prototype,`outside`,void 0),i([s()],M.prototype,`weighed`,void 0);function dt({state:e,done:t,of:r,problem:i,said:o,candidates:s}){return e===`none`?a:e===`running`?n`<p class="unread">Weighing: ${t} of ${r} are done.</p>`:e===`failed`?n`<p class="unread">${i}</p>`:n`${o.map(e=>n`<p class="unread">${e}</p>`)}
    <div class="weighed">${s.map(({name:e,said:t})=>n`<article><h3>${e}</h3>${t.map(e=>n`<p>${e}</p>`)}</article>`)}</div>`}customElements.define(`desk-weigh`,M);var ft={lesson:`a lesson`,file:`a PGN file`,folder:`a folder`},N=class extends t{constructor(...e){super(...e),this.folder=null,this.looked=!1,this.busy=!1,this.lessons=[],this.fresh=async e=>{e.preventDefault();let t=e.currentTarget,n=new FormData(t),r=String(n.get(`fen`)??``).trim(),i=await x(t.querySelector(`input[type=file]`)?.files??null);await this.start({how:`new`,path:String(n.get(`path`)),title:String(n.get(`title`)??``).trim(),side:n.get(`side`)===`black`?`black`:`white`,audience:Number(n.get(`audience`)),...i.length?{files:i}:{},...r?{fen:r}:{}})},this.demo=async e=>{e.preventDefault();let t=String(new FormData(e.currentTarget).get(`path`));await this.start({how:`demo`,path:t})}}createRenderRoot(){return this}connectedCallback(){super.connectedCallback(),this.look(``),b().then(({lessons:e})=>this.lessons=e,e=>O.failed(e))}render(){return n`<div class="page start">
      <h1>What will you teach?</h1>
      <p class="counted">A lesson is a folder with your lines and the words that you say to them. All of it stays on this machine.</p>
      ${this.lessons.length?n`<section><h2>Go back to a lesson</h2>${st(this.lessons)}</section>`:a}
      ${this.looked?n`${this.begin()} ${this.open()} ${this.copy()} <desk-weigh></desk-weigh>`:a}
    </div>`}copy(){return n`<section>
      <h2>Look at the demo</h2>
      <p>The Vienna Gambit for White, a lesson of the Harbour Street club, invented for this. A copy is made for you to write in.</p>
      <form class="ways" @submit=${this.demo}>
        <label>Folder for the copy <input name="path" required .value=${this.inside(`vienna-demo`)} /></label>
        <button class="plain" ?disabled=${this.busy}>open the demo</button>
      </form>
    </section>`}begin(){return n`<section>
      <h2>Begin a lesson</h2>
      <form class="ways" @submit=${this.fresh}>
        <label>Title <input name="title" maxlength="500" placeholder="that of the files, or the folder’s name" /></label>
        <label>Folder <input name="path" required .value=${this.inside(`my-lesson`)} /></label>
        <label>Teaches
          <select name="side"><option value="white">White</option><option value="black">Black</option></select></label>
        <label>Players of about <input name="audience" type="number" min="400" max="2900" value="1500" required /></label>
        <label class="wide">From PGN files, one or several, if you have them <input name="files" type="file" multiple accept=".pgn,.txt" /></label>
        <label class="wide">Or from a position, as a FEN <input name="fen" placeholder="empty: the initial position" spellcheck="false" /></label>
        <button class="plain" ?disabled=${this.busy}>begin</button>
      </form>
    </section>`}open(){let{folder:e}=this;return n`<section>
      <h2>Open a lesson</h2>
      ${e?n`<p class="unread">In ${e.path}</p>
            <ul class="entries">
              ${e.parent===null?a:n`<li><button class="plain" @click=${()=>void this.look(e.parent??``)}>one folder up</button></li>`}
              ${e.entries.map(e=>n`<li><button class="plain" @click=${()=>void this.enter(e)}>${e.name}</button>
                  <span class="unread">${ft[e.kind]}</span></li>`)}
            </ul>
            ${e.entries.length?a:n`<p class="unread">There is no lesson and no PGN file here.</p>`}
            ${e.more?n`<p class="unread">There is more than is shown here; give the lesson’s name when you start the desk.</p>`:a}`:a}
    </section>`}inside(e){return this.folder?`${this.folder.path.replace(/\/$/,``)}/${e}`:``}async look(e){try{this.folder=await ie(e)}catch(e){O.failed(e)}finally{this.looked=!0}}async enter({path:e,kind:t}){t===`folder`?await this.look(e):await this.start({how:`open`,path:e})}async start(e){this.busy=!0;try{let{key:t}=await ae(e);O.problem=``,history.replaceState(null,``,`#${h(t)}`),await O.open(t)}catch(e){O.failed(e)}finally{this.busy=!1}}};i([s()],N.prototype,`folder`,void 0),i([s()],N.prototype,`looked`,void 0),i([s()],N.prototype,`busy`,void 0),i([s()],N.prototype,`lessons`,void 0),customElements.define(`desk-start`,N);var{I:pt}=r,mt=e=>e,ht=()=>document.createComment(``),P=(e,t,n)=>{let r=e._$AA.parentNode,i=t===void 0?e._$AB:t._$AA;if(n===void 0)n=new pt(r.insertBefore(ht(),i),r.insertBefore(ht(),i),e,e.options);else{let t=n._$AB.nextSibling,a=n._$AM,o=a!==e;if(o){let t;n._$AQ?.(e),n._$AM=e,n._$AP!==void 0&&(t=e._$AU)!==a._$AU&&n._$AP(t)}if(t!==i||o){let e=n._$AA;for(;e!==t;){let t=mt(e).nextSibling;mt(r).insertBefore(e,i),e=t}}}return n},F=(e,t,n=e)=>(e._$AI(t,n),e),gt={},_t=(e,t=gt)=>e._$AH=t,vt=e=>e._$AH,I=e=>{e._$AR(),e._$AA.remove()},yt=(e,t,n)=>{let r=new Map;for(let i=t;i<=n;i++)r.set(e[i],i);return r},L=d(class extends o{constructor(e){if(super(e),e.type!==l.CHILD)throw Error(`repeat() can only be used in text expressions`)}dt(e,t,n){let r;n===void 0?n=t:t!==void 0&&(r=t);let i=[],a=[],o=0;for(let t of e)i[o]=r?r(t,o):o,a[o]=n(t,o),o++;return{values:a,keys:i}}render(e,t,n){return this.dt(e,t,n).values}update(e,[t,n,r]){let i=vt(e),{values:a,keys:o}=this.dt(t,n,r);if(!Array.isArray(i))return this.ut=o,a;let s=this.ut??=[],c=[],l,u,d=0,f=i.length-1,p=0,m=a.length-1;for(;d<=f&&p<=m;)if(i[d]===null)d++;else if(i[f]===null)f--;else if(s[d]===o[p])c[p]=F(i[d],a[p]),d++,p++;else if(s[f]===o[m])c[m]=F(i[f],a[m]),f--,m--;else if(s[d]===o[m])c[m]=F(i[d],a[m]),P(e,c[m+1],i[d]),d++,m--;else if(s[f]===o[p])c[p]=F(i[f],a[p]),P(e,i[d],i[f]),f--,p++;else if(l===void 0&&(l=yt(o,p,m),u=yt(s,d,f)),l.has(s[d])){if(l.has(s[f])){let t=u.get(o[p]),n=t===void 0?null:i[t];if(n===null){let t=P(e,i[d]);F(t,a[p]),c[p]=t}else c[p]=F(n,a[p]),P(e,i[d],n),i[t]=null;p++}else I(i[f]),f--}else I(i[d]),d++;for(;p<=m;){let t=P(e,c[m+1]);F(t,a[p]),c[p++]=t}for(;d<=f;){let e=i[d++];e!==null&&I(e)}return this.ut=o,_t(e,c),ee}}),R={fails:{glyph:`▲`,word:`fails`},unsettled:{glyph:`◐`,word:`unsettled`},holds:{glyph:`●`,word:`holds`},waiting:{glyph:`○`,word:`being checked`}},bt=[`fails`,`unsettled`,`waiting`,`holds`];function z(e){return[...e].sort((e,t)=>bt.indexOf(e.outcome)-bt.indexOf(t.outcome)||e.start-t.start)}var xt=(e,t)=>e.filter(({outcome:e,place:n,marks:r,evidence:i})=>e===`holds`&&n===t.id&&r.length&&(!i||i.fen===t.fen)),St=[`fails`,`unsettled`,`holds`],Ct=class{constructor(){this.ranges=[]}set(e,t,n){this.clear(),t.forEach(({start:t,end:r,outcome:i},a)=>{if(!St.includes(i)||r>e.length||t>=r)return;let o=document.createRange();o.setStart(e,t),o.setEnd(e,r),this.add(i,o),n(a)&&this.add(`lit`,o)})}clear(){for(let[e,t]of this.ranges)CSS.highlights?.get(e)?.delete(t);this.ranges=[]}add(e,t){if(!CSS.highlights)return;let n=CSS.highlights.get(e)??new Highlight;CSS.highlights.set(e,n.add(t)),this.ranges.push([e,t])}};function B(e){return e.replaceAll(`\r
`,` ⁠`).replace(/(?<!\n)\n(?!\n)/g,` `).replaceAll(`	`,` `)}function wt(e,t){let n=B(e),r=0,i=Math.min(n.length,t.length);for(;r<i&&n.charCodeAt(r)===t.charCodeAt(r);)r+=1;let a=0;for(;a<i-r&&n.charCodeAt(n.length-1-a)===t.charCodeAt(t.length-1-a);)a+=1;return e.slice(0,r)+t.slice(r,t.length-a)+e.slice(e.length-a)}function V(e,t){if(!/[\ud800-\udbff]/.test(e))return t;let n=0;for(let r=t;r>0&&n<e.length;--r)n+=(e.codePointAt(n)??0)>65535?2:1;return n}var Tt=300,Et=800,Dt=class extends HTMLElement{constructor(...e){super(...e),this.at=null,this.index=null,this.base=null,this.timer=0,this.first=0,this.sending=!1,this.lines=new Ct,this.marked=[],this.typed=()=>{this.lines.clear(),O.waits(this,!0);let e=performance.now();this.timer||(this.first=e),clearTimeout(this.timer),this.timer=window.setTimeout(()=>void this.save(),Math.max(0,Math.min(Tt,this.first+Et-e)))},this.entered=()=>{this.at&&O.cursor!==this.at.place&&O.go(this.at.place)},this.left=()=>{this.save(),this.dispatchEvent(new CustomEvent(`words-left`,{bubbles:!0}))},this.pressed=e=>{e.isComposing||(e.key===`Enter`&&e.shiftKey?(e.preventDefault(),document.execCommand(`insertText`,!1,`

`)):(e.key===`Escape`||e.key===`Enter`)&&(e.preventDefault(),e.stopPropagation(),this.save(),this.dispatchEvent(new CustomEvent(`words-done`,{bubbles:!0}))))},this.caret=()=>{let e=document.activeElement===this?getSelection():null;if(!e?.focusNode||!this.contains(e.focusNode))return;let t=this.base??``,n=e.focusOffset,r=O.sentences.find(({comment:e,start:r,end:i})=>e===this.index&&V(t,r)<=n&&n<=V(t,i)),i=this.marked.filter(({id:e})=>r?.findings.includes(e)),a=i.find(({id:e})=>e===O.shown?.exhibit.id)??z(i)[0];a&&O.shown?.exhibit.id!==a.id&&O.show(a)}}connectedCallback(){let e=!!O.lesson?.unwritable;this.setAttribute(`contenteditable`,e?`false`:`plaintext-only`),e&&this.setAttribute(`aria-readonly`,`true`),this.setAttribute(`role`,`textbox`),this.setAttribute(`aria-multiline`,`true`),this.setAttribute(`spellcheck`,`true`),this.tabIndex=-1,this.addEventListener(`input`,this.typed),this.addEventListener(`blur`,this.left),this.addEventListener(`focus`,this.entered),this.addEventListener(`keydown`,this.pressed),document.addEventListener(`selectionchange`,this.caret),this.underline()}disconnectedCallback(){this.lines.clear(),document.removeEventListener(`selectionchange`,this.caret),this.dirty&&this.save()}get spot(){return this.at}show(e,t,n){this.at=e,this.index=t?.index??null;let r=O.tree?.byId.get(e.place);this.setAttribute(`aria-label`,`Words ${e.where} ${r?T(r):`the start`}`);let i=t?.text??null;if(!(this.dirty||this.sending)&&i!==this.base){this.base=i;let e=B(i??``);this.textContent!==e&&this.put(e)}n!==this.marked&&(this.marked=n,this.underline(),this.caret())}get dirty(){return(this.textContent??``)!==B(this.base??``)}put(e){let t=document.activeElement===this?getSelection():null,n=t?.focusNode&&this.contains(t.focusNode)?t.focusOffset:null;this.textContent=e;let r=this.firstChild;n!==null&&r&&t?.collapse(r,Math.min(n,e.length))}async save(){if(clearTimeout(this.timer),this.timer=0,this.sending||!this.at||(O.waits(this,this.dirty),!this.dirty))return;let e=this.textContent??``;if(this.base===null&&!e.trim())return O.waits(this,!1);let t=wt(this.base??``,e);this.sending=!0;let n=`refused`;try{n=await O.write(this.at,t,this.base),n===`written`?this.base=t.trim()?t:null:n===`clash`&&(this.base=O.clash?.theirs??null,this.put(B(this.base??``)))}finally{this.sending=!1}let r=n!==`clash`&&this.textContent!==e;O.waits(this,r||n===`refused`),r?this.timer=window.setTimeout(()=>void this.save(),Tt):n===`written`&&this.dirty&&this.put(B(this.base??``)),this.underline()}spans(){let e=this.base??``;return this.marked.map(({start:t,end:n,outcome:r})=>({start:V(e,t),end:V(e,n),outcome:r}))}underline(){let e=this.firstChild;if(this.dirty||!(e instanceof Text))return this.lines.clear();this.lines.set(e,this.spans(),e=>this.marked[e]?.id===O.shown?.exhibit.id)}};customElements.define(`desk-words`,Dt);var Ot=[],H=class extends t{constructor(...e){super(...e),this.passage=null,this.findings=Ot,this.byComment=new Map}createRenderRoot(){return this}willUpdate(){this.byComment.clear();for(let e of this.findings)e.comment!==null&&this.byComment.set(e.comment,[...this.byComment.get(e.comment)??[],e])}render(){let{passage:e}=this;if(!e)return a;let t=null;return n`<div class="signs">${this.signs()}</div>
      <p class="said">
        ${this.words(e.before)}${e.moves.map(e=>{let n=this.move(e,t);return t=e,n})}${this.words(e.after)}
      </p>
      ${e.diagram?this.diagram(e.diagram):a}`}updated(){for(let e of this.querySelectorAll(`desk-words`)){let{said:t}=e;t&&e.show(t.spot,t.comment,(t.comment&&this.byComment.get(t.comment.index))??Ot)}this.dispatchEvent(new CustomEvent(`passage-drawn`,{bubbles:!0}))}words(e){return L(e,({spot:e})=>`${e.place} ${e.where} ${e.nth}`,e=>n`<desk-words .said=${e} data-place=${e.spot.place}></desk-words> `)}move(e,t){let r=!e.number.endsWith(`...`)||!t||t.san===null?`${e.number} `:``,i=e.san===null?`Start`:`${r}${e.san}${E(e)}`;return n`<button
        class="move ${e.san===null?`start`:e.depth?``:`main`}"
        data-place=${e.id}
        tabindex=${e.id===O.cursor?0:-1}
        aria-label=${T(e)}
        @click=${()=>O.go(e.id)}
      >${i}</button>${this.join(e)} `}diagram(e){let t=xt(this.findings,e),r=t.length?` Drawn: ${t.map(({words:e})=>e).join(`; `)}.`:``,i=e.san===null?`The start`:`After ${T(e)}`,a=e.fen.split(` `)[1]===`b`?`Black`:`White`;return n`<figure class="diagram" data-place=${e.id}>
      <lesson-board
        still
        .fen=${e.fen}
        .marks=${t.flatMap(({marks:e})=>e)}
        .last=${e.uci&&e.uci!==`0000`?{uci:e.uci}:null}
        .flipped=${O.lesson?.side===`black`}
        .label=${`Diagram. ${i}`}
        .alternative=${`${e.diagram??``}${r}`}
      ></lesson-board>
      <figcaption>
        <span>${i}. ${a} to move.</span>
        <button class="plain" @click=${()=>void this.takeAway(e)}>take this diagram away</button>
      </figcaption>
    </figure>`}async takeAway(e){let t=this.closest(`desk-manuscript`);await O.diagram(e),t?.dispatchEvent(new CustomEvent(`words-done`))}join(e){let{tree:t}=O,r=e.joins===null?void 0:t?.byId.get(e.joins);return!t||!r||t.parent(e)?.joins||(t.order.get(r.id)??0)>(t.order.get(e.id)??0)?a:n` <button class="join" @click=${()=>O.go(r.id)}>joins ${T(r)}</button>`}signs(){let e=z(this.findings);return[...e.filter(({outcome:e})=>e===`fails`||e===`unsettled`).map(e=>n`<button
          class="sign ${e.outcome}"
          title=${e.words}
          @click=${()=>O.show(e)}
        ><span class="glyph" aria-hidden="true">${R[e.outcome].glyph}</span>
          <span class="word">${R[e.outcome].word}</span>${e.outcome===`fails`?n` <span class="why">${e.why}</span>`:a}</button>`),this.many(e,`waiting`,e=>`${e} being checked`),this.many(e,`holds`,e=>`${e} hold`)]}many(e,t,r){let i=e.filter(e=>e.outcome===t),o=i[0];if(!o)return a;let{glyph:s,word:c}=R[t];return n`<button class="sign ${t}" @click=${()=>O.show(o)}><span class="glyph" aria-hidden="true">${s}</span>
      <span class="word">${i.length>1?r(i.length):c}</span></button>`}};i([u({attribute:!1})],H.prototype,`passage`,void 0),i([u({attribute:!1})],H.prototype,`findings`,void 0),customElements.define(`desk-passage`,H);var kt=[],At=class extends t{constructor(){super(),this.stretches=[],this.writing=null,this.focusNext=null,this.findings=new Map,this.stale=!0,this.marking=!1,new D(this,O,[`lesson`,`findings`]),O.addEventListener(`lesson`,()=>this.stale=!0),O.addEventListener(`findings`,()=>this.sort()),O.addEventListener(`cursor`,()=>this.mark()),this.addEventListener(`keydown`,e=>this.pressed(e)),this.addEventListener(`words-done`,()=>this.back()),this.addEventListener(`words-left`,e=>{let t=e.target;t.spot?.place===this.writing&&!t.textContent&&this.write(null)}),this.addEventListener(`passage-drawn`,()=>{this.marking||(this.marking=!0,queueMicrotask(()=>{this.marking=!1,this.mark()}))})}createRenderRoot(){return this}firstUpdated(){document.activeElement===document.body&&(this.focusNext=`move`)}willUpdate(){this.stale&&(this.stale=!1,this.stretches=O.tree?.stretches(this.writing)??[],this.sort())}render(){return O.lesson?n`${L(this.stretches,({key:e})=>e,e=>n`<section class="stretch depth-${Math.min(e.depth,3)}">
        ${e.game?n`<h2 class="game">${e.game}</h2>`:a}
        ${e.heading?Mt(e.heading):a}
        ${L(e.passages,({key:e})=>e,e=>n`<desk-passage
            .passage=${e}
            .findings=${this.findings.get(e.key)??kt}
          ></desk-passage>`)}
      </section>`)}
    ${O.lesson.places.length===O.lesson.games.length?n`<p class="empty">Nothing is written yet. Play the first move on the board, or type it in the field under
          the board: <em>e4</em>, <em>Nf3</em>. Enter, with the field empty, begins the words.</p>`:a}`:a}sort(){let e=new Map;for(let{passages:t}of this.stretches)for(let n of t){for(let{comment:t}of[...n.before,...n.after])t&&e.set(`c${t.index}`,n.key);for(let t of n.moves)e.set(t.id,n.key)}let t=new Map;for(let n of O.findings){let r=e.get(n.comment===null?n.place:`c${n.comment}`);if(r===void 0)continue;let i=t.get(r);i?i.push(n):t.set(r,[n])}let n=this.findings;this.findings=new Map([...t].map(([e,t])=>{let r=n.get(e);return[e,r&&jt(r,t)?r:t]}))}mark(){let e=this.querySelector(`.move[data-place="${O.cursor}"]`);for(let t of this.querySelectorAll(`.move.here`))t!==e&&(t.classList.remove(`here`),t.removeAttribute(`aria-current`),t.tabIndex=-1);for(let e of this.querySelectorAll(`desk-words.lit`))e.classList.remove(`lit`),e.underline();for(let e of this.querySelectorAll(`desk-words[data-place="${O.cursor}"]`))e.classList.add(`lit`),e.underline();let t=e??this.querySelector(`desk-words[data-place="${O.cursor}"]`);if(e&&!e.classList.contains(`here`)?(e.classList.add(`here`),e.setAttribute(`aria-current`,`true`),e.tabIndex=0,e.scrollIntoView({block:`nearest`})):!e&&t&&!t.matches(`:focus`)&&t.scrollIntoView({block:`nearest`}),this.focusNext===`move`)this.focusNext=null,(e??t)?.focus();else if(this.focusNext===`words`){let e=[...this.querySelectorAll(`desk-words[data-place="${O.cursor}"]`)].at(-1);if(!e)return;this.focusNext=null,e.focus();let t=e.firstChild;t&&getSelection()?.collapse(t,t.textContent?.length??0)}}go(e){e!==void 0&&(this.focusNext=`move`,O.go(e))}back(){this.focusNext=`move`,this.mark()}begin(){let{place:e}=O;e&&(this.focusNext=`words`,e.after.length?this.mark():this.write(e.id))}write(e){this.writing=e,this.stale=!0,this.requestUpdate()}pressed(e){let{tree:t,place:n}=O;if(!t||!n||e.altKey||e.ctrlKey||e.metaKey||e.target.matches(`desk-words, .sign, .join, figcaption *`))return;let{places:r}=t.lesson,i=t.order.get(n.id)??0;if(e.key===`ArrowRight`)this.go(t.children(n.id)[0]?.id);else if(e.key===`ArrowLeft`)this.go(n.parent??void 0);else if(e.key===`ArrowDown`)this.go(r[i+1]?.id);else if(e.key===`ArrowUp`)this.go(r[i-1]?.id);else if(e.key===`Home`)this.go(r[0]?.id);else if(e.key===`End`)this.go(r.at(-1)?.id);else if(e.key===`Enter`&&e.shiftKey){if(!t.lesson.folder)return;this.focusNext=`move`,O.diagram(n)}else if(e.key===`Enter`)this.begin();else if(/^[a-hKQRBNO]$/.test(e.key))this.dispatchEvent(new CustomEvent(`move-begun`,{detail:e.key,bubbles:!0}));else return;e.preventDefault()}};function jt(e,t){return e.length===t.length&&e.every((e,n)=>e===t[n]||JSON.stringify(e)===JSON.stringify(t[n]))}function Mt({words:e,move:t}){let r=n`${e} <span class="notation">${t}</span>`;return(O.lesson?.games.length??1)>1?n`<h3 class="branch">${r}</h3>`:n`<h2 class="branch">${r}</h2>`}customElements.define(`desk-manuscript`,At);function Nt(e){let t=new Map,n=new Map,r=[],i=0,a=(e,t,n)=>(r[e]??[]).every(([e,r])=>n<e||t>r),o=(e,r)=>{let a={place:e,x:e.ply,y:r};t.set(e.id,a),n.set(`${r} ${e.ply}`,a),i=Math.max(i,e.ply)},s=[],c=0;for(let t of e.lesson.games){let n=e.byId.get(t.root);if(n){for(s.push({first:n,floor:c});s.length;){let{first:t,floor:n}=s.pop(),i=[];for(let n=t;n;n=e.children(n.id)[0])i.push(n);let c=Math.max(0,t.ply-1),l=(i.at(-1)?.ply??t.ply)+1,u=n;for(;!a(u,c,l);)u+=1;(r[u]??=[]).push([c,l]);for(let e of i)o(e,u);for(let t of i)for(let n of[...e.children(t.id)].slice(1).reverse())s.push({first:n,floor:u+1})}c=r.length}}return{spots:t,at:n,plies:i,tracks:r.length}}var U=26,W=22,Pt=190,Ft=.19,G=[.25,.35,.5,.7,1,1.4,2],It=62,Lt=30,K=12,q=class extends t{constructor(){super(),this.level=4,this.pan={x:0,y:0},this.width=800,this.filter=!1,this.laid=null,this.failing=new Set,this.drag=null,this.follow=!0,this.sized=new ResizeObserver(([e])=>{e&&(this.width=e.contentRect.width)}),new D(this,O,[`lesson`,`cursor`,`findings`,`study`]),O.addEventListener(`lesson`,()=>this.laid=null),O.addEventListener(`cursor`,()=>this.follow=!0),O.addEventListener(`findings`,()=>{let e=O.findings.filter(({outcome:e})=>e===`fails`);this.failing=new Set(e.map(({place:e})=>e))})}createRenderRoot(){return this}connectedCallback(){super.connectedCallback(),this.sized.observe(this)}disconnectedCallback(){super.disconnectedCallback(),this.sized.disconnect()}get scale(){return G[this.level]??1}get ply(){return It*this.scale}get track(){return Lt*Math.max(.4,Math.min(this.scale,1.2))}get height(){let e=1+Math.floor((Math.min(Pt,innerHeight*Ft)-W-K)/this.track);return this.high(Math.max(1,Math.min(e,this.laid?.tracks??1)))}high(e){return W+(e-1)*this.track+K}willUpdate(e){let{tree:t}=O;t&&!this.laid&&(this.laid=Nt(t),this.follow=!0),(e.has(`level`)||e.has(`width`))&&(this.follow=!0),this.follow&&this.reach()}reach(){this.follow=!1;let e=this.laid?.spots.get(O.cursor);if(!e)return;let t=Math.min(this.ply*1.2,this.width/4),n=e.x*this.ply,r=e.y*this.track,i=this.width-U-2*t,a=this.height-W-K,o={x:Math.max(Math.min(this.pan.x,n),n-i),y:Math.max(Math.min(this.pan.y,r),r-a)};this.pan=this.bound(o)}bound({x:e,y:t}){let n=U+((this.laid?.plies??0)+1)*this.ply-this.width,r=this.high(this.laid?.tracks??1)-this.height;return{x:Math.max(0,Math.min(e,n)),y:Math.max(0,Math.min(t,r))}}render(){let{tree:e}=O,{laid:t,height:r,width:i}=this;if(!e||!t)return a;let o=[...t.spots.values()].filter(e=>this.inSight(e,r)),s=this.filter?this.failingRoads():null,l=s?o.filter(({place:e})=>s.has(e.id)):o,u=t.tracks===1?`1 line`:`${t.tracks} tracks`;return n`<div
        class="map"
        role="group"
        tabindex="0"
        aria-label="Line map: ${t.spots.size-e.lesson.games.length} moves on ${u}; at ${O.place?T(O.place):`the start`}"
        @keydown=${this.pressed}
        @wheel=${this.wheeled}
        @pointerdown=${this.down}
        @pointermove=${this.moved}
        @pointerup=${this.up}
        @pointercancel=${()=>this.drag=null}
      >
        <svg width=${i} height=${r} viewBox="0 0 ${i} ${r}" aria-hidden="true">
          <path class="track ${s?`faint`:``}" d=${this.ways(o)}></path>
          ${s?c`<path class="track" d=${this.ways(l)}></path>`:a}
          <path class="track lit" d=${this.road()}></path>
          <path class="joining" d=${this.joins(o)}></path>
          <path class="stub" d=${this.stubs(l)}></path>
          <path class="slip" d=${this.slips(l)}></path>
          <path class="pause" d=${this.pauses(l)}></path>
          ${l.map(e=>this.stop(e))}
        </svg>
      </div>
      <div class="zoom">
        ${this.failing.size||this.filter?n`<button class="plain words" aria-pressed=${this.filter?`true`:`false`} @click=${()=>this.filter=!this.filter}>${this.filter?`show all`:`only what fails`}</button>`:a}
        <button class="plain" aria-label="Draw the map smaller" ?disabled=${this.level===0} @click=${()=>this.zoom(-1)}>−</button>
        <button class="plain" aria-label="Draw the map larger" ?disabled=${this.level===G.length-1} @click=${()=>this.zoom(1)}>+</button>
      </div>`}x(e){return U+e.x*this.ply-this.pan.x}y(e){return W+e.y*this.track-this.pan.y}inSight(e,t){let n=this.x(e),r=this.y(e);return n>-this.ply&&n<this.width+this.ply&&r>-this.track&&r<t+this.track}parentSpot(e){return e.place.parent===null?void 0:this.laid?.spots.get(e.place.parent)}way(e,t){let[n,r,i,a]=[this.x(e),this.y(e),this.x(t),this.y(t)].map(J);if(r===a)return`M${n} ${r}H${i}`;let o=Math.min(8,(i-n)/2),s=n+(i-n)*.42;return`M${n} ${r}Q${J(s)} ${r} ${J(s)} ${J(r+o)}V${J(a-o)}Q${J(s)} ${a} ${J(s+o)} ${a}H${i}`}ways(e){return e.map(e=>{let t=this.parentSpot(e);return t?this.way(t,e):``}).join(``)}road(){let e=``,t=this.laid?.spots.get(O.cursor);for(let n=t&&this.parentSpot(t);t&&n;t=n,n=this.parentSpot(t))e=this.way(n,t)+e;return e}joins(e){return e.map(e=>{let t=e.place.joins===null?void 0:this.laid?.spots.get(e.place.joins),n=this.parentSpot(e);if(!t||n?.place.joins||(O.tree?.order.get(t.place.id)??0)>(O.tree?.order.get(e.place.id)??0))return``;let[r,i,a,o]=[this.x(e),this.y(e),this.x(t),this.y(t)].map(J);return`M${r} ${i}C${(r??0)+this.ply/2} ${i} ${(a??0)+this.ply/2} ${o} ${a} ${o}`}).join(``)}stubs(e){let t=new Set(O.study?.things.filter(({sort:e,decided:t})=>(e===`dangerous`||e===`met`)&&t===null).map(({place:e})=>e));return e.filter(({place:e})=>t.has(e.id)).map(e=>{let[t,n]=[J(this.x(e)),J(this.y(e))],r=J(Math.min(9,this.ply/3));return`M${t} ${n}l${r} ${J(r*.7)}m5.4 1.4a3 3 0 1 1-6 0a3 3 0 1 1 6 0`}).join(``)}slips(e){let t=new Set(O.study?.things.filter(({sort:e,decided:t})=>e===`slips`&&t===null).map(({place:e})=>e));return e.filter(({place:e})=>t.has(e.id)).map(e=>`M${J(this.x(e)+7)} ${J(this.y(e)-5)}l4 10`).join(``)}pauses(e){let t=new Set(O.study?.pauses.map(({place:e})=>e));return e.filter(({place:e})=>t.has(e.id)).map(e=>`M${J(this.x(e)-5)} ${J(this.y(e)+5)}v5m4 -5v5`).join(``)}failingRoads(){let e=new Set;for(let t of this.failing)for(let n=O.tree?.byId.get(t);n&&!e.has(n.id);n=O.tree?.parent(n))e.add(n.id);return e}stop(e){let{place:t}=e,n=J(this.x(e)),r=J(this.y(e)),i=t.id===O.cursor,o=this.failing.has(t.id),s=this.ply>=40&&t.san!==null?t.san+E(t):``;return c`${o?c`<path class="failing" data-place=${t.id} d="M${n} ${r-6}L${n+5.6} ${r+4}H${n-5.6}Z"></path>`:c`<circle class="stop" cx=${n} cy=${r} r=${this.scale<.5?1.6:2.4}></circle>`}
      ${i?c`<circle class="here" cx=${n} cy=${r} r="7"></circle>`:a}
      ${s?c`<text class=${i?`lit`:``} x=${n} y=${r-8}>${s}</text>`:a}`}zoom(e){this.level=Math.max(0,Math.min(G.length-1,this.level+e))}under(e){let t=e.currentTarget.getBoundingClientRect(),n=Math.round((e.clientX-t.left-U+this.pan.x)/this.ply),r=Math.round((e.clientY-t.top-W+this.pan.y+3)/this.track);return this.laid?.at.get(`${r} ${n}`)?.place}down(e){e.button===0&&(this.drag={x:e.clientX,y:e.clientY,pan:this.pan,far:!1},e.currentTarget.setPointerCapture(e.pointerId))}moved(e){let{drag:t}=this;if(!t)return;let[n,r]=[e.clientX-t.x,e.clientY-t.y];t.far||=Math.hypot(n,r)>4,t.far&&(this.pan=this.bound({x:t.pan.x-n,y:t.pan.y-r}))}up(e){let t=this.drag?.far;this.drag=null;let n=t?void 0:this.under(e);n&&O.go(n.id)}wheeled(e){e.preventDefault(),e.ctrlKey?this.zoom(e.deltaY<0?1:-1):this.pan=this.bound({x:this.pan.x+e.deltaX+(e.shiftKey?e.deltaY:0),y:this.pan.y+(e.shiftKey?0:e.deltaY)})}pressed(e){let{tree:t,place:n}=O;if(!t||!n||e.altKey||e.ctrlKey||e.metaKey)return;let{places:r}=t.lesson,i=t.order.get(n.id)??0,a={ArrowRight:t.children(n.id)[0]?.id,ArrowLeft:n.parent,ArrowDown:r[i+1]?.id,ArrowUp:r[i-1]?.id,Home:r[0]?.id,End:r.at(-1)?.id};if(e.key in a){let t=a[e.key];t&&O.go(t)}else if(e.key===`+`)this.zoom(1);else if(e.key===`-`)this.zoom(-1);else return;e.preventDefault()}};i([s()],q.prototype,`level`,void 0),i([s()],q.prototype,`pan`,void 0),i([s()],q.prototype,`width`,void 0),i([s()],q.prototype,`filter`,void 0);function J(e){return Math.round(e*10)/10}customElements.define(`desk-map`,q);var Rt=new Map(Object.entries(e).map(([e,t])=>[t,Number(e)]).reverse().flatMap(([e,t])=>[[e,t],[e.replace(`−`,`-`),t]])),zt={book:`a book`,game:`a game`,analysis:`my own analysis`,pupil:`a pupil`},Bt=class extends t{constructor(){super(),this.sourced=e=>{e.preventDefault();let{place:t}=O,n=new FormData(e.currentTarget),r=String(n.get(`words`)??``).trim(),i=String(n.get(`sort`));t&&O.change({op:`source`,place:t.id,source:r?{sort:i,words:r}:null},r?`The line from ${T(t)} on comes from: ${r}.`:`Nothing is said of where ${T(t)} comes from.`)},this.signed=t=>{t.preventDefault();let{place:n}=O;if(!n)return;let r=(this.querySelector(`#signs`)?.value??``).split(/\s+/).filter(e=>e&&!n.signs.includes(e)),i=r.map(e=>Rt.get(e)??(/^\$\d{1,9}$/.test(e)?Number(e.slice(1)):void 0)),a=r[i.indexOf(void 0)];a===void 0?O.change({op:`set_marks`,place:n.id,nags:i.filter(e=>e!==void 0)},`${T(n)} has ${r.length?`the signs ${r.join(` `)}`:`no signs`} now.`):O.failed(Error(`${a} is no sign: write one of ${[...new Set(Object.values(e))].join(` `)}`))},new D(this,O,[`lesson`,`cursor`])}createRenderRoot(){return this}render(){let{place:e}=O;if(!e)return a;if(e.san===null)return O.lesson?.folder?n`<p class="doings place">${Vt(e)}</p>`:a;let t=e.joins===null?void 0:O.tree?.byId.get(e.joins),r=T(e),i=E(e).replace(/\u202f/g,` `).trim();return n`<form class="typed signs-of" @submit=${this.signed}>
        <label for="signs">Signs of <span class="notation">${r}</span></label>
        <input id="signs" autocomplete="off" spellcheck="false" placeholder="!  ?!  +=" .value=${i} />
      </form>
      ${O.lesson?.folder?this.source(e.source):a}
      <p class="doings place">
        ${O.lesson?.folder?Vt(e):a}
        ${e.depth?n`<button class="plain" @click=${()=>void O.change({op:`promote`,place:e.id},`The line of ${r} is one level up.`)}>tell this line first</button>`:a}
        ${(O.tree?.before(e)??-1)>0?n`<button class="plain" @click=${()=>void O.change({op:`bring_forward`,place:e.id},`The line of ${r} is told one place earlier.`)}>tell this line earlier</button>`:a}
        ${t&&O.tree?.children(t.id).length?n`<button
              class="plain"
              @click=${()=>void O.change({op:`join`,place:e.id,other:t.id},`What follows ${T(t)} follows here too.`)}
            >go on here as after ${T(t)}</button>`:a}
        <button class="plain" @click=${()=>void O.change({op:`cut`,place:e.id},`${r} and what follows it is cut; undo brings it back.`)}>cut ${r}</button>
      </p>`}source(e){return n`<form class="typed" @submit=${this.sourced}>
      <label for="source">From</label>
      <select name="sort" aria-label="Sort of source">
        ${Object.entries(zt).map(([t,r])=>n`<option value=${t} ?selected=${e?.sort===t}>${r}</option>`)}
      </select>
      <input id="source" name="words" maxlength="300" autocomplete="off" placeholder="book and page, players and year …" .value=${e?.words??``} />
    </form>`}};function Vt(e){return n`<button class="plain" @click=${()=>void O.diagram(e)}>${e.diagram===null?`put a diagram here`:`take the diagram away`}</button>`}customElements.define(`desk-doings`,Bt);var Ht=class extends t{constructor(){super(),this.flipped=null,this.pressed=e=>{if(e.key!==`Escape`)return;e.preventDefault();let t=this.field();t&&(t.value=``),this.dispatchEvent(new CustomEvent(`back-to-page`,{bubbles:!0}))},this.submitted=async e=>{e.preventDefault();let t=this.field();if(!t)return;let n=t.value.replace(/\d+\.+/g,` `).split(/\s+/).filter(Boolean);if(!n.length){this.dispatchEvent(new CustomEvent(`words-begun`,{bubbles:!0}));return}let r=t.value;await O.addLine(n)&&t.value===r&&(t.value=``)},new D(this,O,[`lesson`,`cursor`,`position`,`findings`])}createRenderRoot(){return this}render(){let{place:e,position:t,lesson:r,shown:i}=O;if(!e||!r)return a;let o=i&&i.step>=0?i.exhibit.evidence:null,s=o?Be(O):e.uci&&e.san?{uci:e.uci,san:e.san}:null,c=this.flipped??r.side===`black`,l=O.fen.split(` `)[1]===`b`?`Black`:`White`,u=o?`In the evidence`:e.san===null?`The start`:`After ${T(e)}`,d=xt(O.findings,e).flatMap(({marks:e})=>e),ee=i?o&&i.step>0?[]:i.exhibit.marks:d;return n`<figure>
        <lesson-board
          .fen=${O.fen}
          .moves=${o||r.unwritable?[]:t?.legal??[]}
          .marks=${ee}
          .last=${s&&s.uci!==`0000`?s:null}
          .flipped=${c}
          .label=${`${u}, ${l} to move`}
          .alternative=${t?.alternative??``}
          @played=${e=>void O.addLine([e.detail.uci])}
        ></lesson-board>
        <figcaption>
          <span>${u}. ${l} to move.</span>
          <button class="plain" @click=${()=>this.flipped=!c}>turn the board</button>
        </figcaption>
      </figure>
      <form class="typed" @submit=${this.submitted}>
        <label for="move">Next move</label>
        <input
          id="move"
          name="move"
          autocomplete="off"
          autocapitalize="off"
          spellcheck="false"
          placeholder=${l===`White`?`e4, Nf3 …`:`e5, Nf6 …`}
          @keydown=${this.pressed}
        />
      </form>`}begin(e){let t=this.field();t&&(t.value=e,t.focus(),t.setSelectionRange(e.length,e.length))}field(){return this.querySelector(`input`)}};i([s()],Ht.prototype,`flipped`,void 0),customElements.define(`desk-figure`,Ht);var Y=class extends t{constructor(){super(),this.names=[],this.told=null,this.asked=async e=>{e.preventDefault();let t=new FormData(e.currentTarget),{lesson:n,cursor:r}=O;if(n)try{let{said:e}=await ke(n.key,r,String(t.get(`collection`)),t.get(`audience`)!==null);this.told={place:r,said:e}}catch(e){O.failed(e)}},new D(this,O,[`cursor`])}createRenderRoot(){return this}connectedCallback(){super.connectedCallback(),w().then(({collections:e})=>this.names=e.map(({name:e})=>e),e=>O.failed(e))}render(){if(!this.names.length||!O.place)return a;let e=this.told?.place===O.cursor?this.told:null;return n`<form class="figures" @submit=${this.asked}>
        <label>Games of <select name="collection">${this.names.map(e=>n`<option ?selected=${e===O.way?.collection}>${e}</option>`)}</select></label>
        <label><input type="checkbox" name="audience" /> of the audience alone</label>
        <button class="plain">count</button>
      </form>
      <div aria-live="polite">${e?.said.map(e=>n`<p>${e}</p>`)}</div>`}};i([s()],Y.prototype,`names`,void 0),i([s()],Y.prototype,`told`,void 0),customElements.define(`desk-figures`,Y);var Ut=class extends t{constructor(){super(),new D(this,O,[`lesson`,`cursor`,`findings`])}createRenderRoot(){return this}render(){let e=O.sentences.filter(({place:e,status:t})=>e===O.cursor&&t!==`read`&&t!==`left alone`);return e.length?n`${e.map(e=>this.told(e))}`:a}told(e){let t=Gt(e);if(e.status===`your opinion`)return n`<p class="unread">“${t}” is your opinion and is not checked.
        <button class="plain" @click=${()=>void Wt(e,!1)}>check it again</button></p>`;let r=e.status===`other language`?`it is not English`:e.why??`it was not understood`;return n`<p class="unread">Not checked: “${t}” (${r}).</p>`}};function Wt({comment:e,start:t,end:n},r){return O.change({op:`opinion`,comment:e,start:t,end:n,opinion:r},r?`It is your opinion now, and is not checked.`:`It is checked again.`)}function Gt({place:e,comment:t,start:n,end:r}){let i=O.tree?.byId.get(e),a=[...i?.before??[],...i?.after??[]].find(({index:e})=>e===t)?.text??``;return a.slice(V(a,n),V(a,r)).replace(/\s+/g,` `)}customElements.define(`desk-sentences`,Ut);var Kt=class extends t{constructor(){super(),new D(this,O,[`lesson`,`cursor`,`findings`])}createRenderRoot(){return this}render(){let{place:e,shown:t}=O;if(!e)return a;let r=z(O.findings.filter(t=>t.place===e.id));return n`${r.map(e=>e.id===t?.exhibit.id?this.told(e):this.named(e))}`}sign(e){let{glyph:t,word:r}=R[e.outcome];return n`<span class="sign ${e.outcome}"><span class="glyph" aria-hidden="true">${t}</span>
      <span class="word">${r}</span></span>`}named(e){return n`<button class="named" @click=${()=>O.show(e)}>${this.sign(e)} “${e.words}”</button>`}told(e){let t=O.lesson?.folder?O.sentences.find(({findings:t})=>t.includes(e.id)):void 0;return n`<section class="note" aria-label="Finding">
      <p class="quoted">${this.sign(e)} “${e.words}”</p>
      <p class="why">${e.outcome===`waiting`?`This is being checked.`:e.why}</p>
      ${e.instead?n`<p class="instead"><span class="small-caps">true</span> ${e.instead}</p>`:a}
      ${e.second?n`<p class="second">${e.second}</p>`:a}
      ${O.contradictions.map(({findings:t,why:r})=>{if(!t.includes(e.id))return a;let i=O.findings.find(({id:n})=>n!==e.id&&t.includes(n));return n`<p class="second"><span class="small-caps">against</span> ${r}
          ${i?n`<button class="plain" @click=${()=>O.show(i)}>see “${i.words}”</button>`:a}</p>`})}
      ${k(e)}
      ${t?n`<p class="doings"><button class="plain" @click=${()=>void Wt(t,!0)}>this is my opinion</button></p>`:a}
    </section>`}};customElements.define(`desk-note`,Kt);var X=class extends t{constructor(){super(),this.asking=!1,this.told=null,this.submitted=async e=>{e.preventDefault();let{place:t,lesson:n}=O,r=this.querySelector(`input`)?.value.trim()??``;if(t&&n&&r&&!this.asking){this.asking=!0;try{this.told={place:t.id,question:r,answer:await pe(n.key,t.id,r)},O.problem=``,O.tell(`status`)}catch(e){O.failed(e)}finally{this.asking=!1}}},new D(this,O,[`lesson`,`cursor`])}createRenderRoot(){return this}render(){let{place:e}=O;if(!e)return a;let t=this.told?.place===e.id?this.told:null;return n`<form class="typed" @submit=${this.submitted}>
        <label for="question">What about</label>
        <input id="question" autocomplete="off" spellcheck="false" placeholder="moves from here …" ?readonly=${this.asking} />
      </form>
      <div aria-live="polite">
        ${this.asking?n`<p class="unread">Looking.</p>`:a}
        ${t&&!this.asking?this.answer(t.question,t.answer,e.id):a}
      </div>`}answer(e,t,r){let i={id:`answer to ${e}`,place:r,evidence:t.evidence,marks:[]},a=t.places.flatMap(e=>O.tree?.byId.get(e)??[]).slice(0,3);return n`<section class="note" aria-label="Answer">
      <p class="quoted">What about ${e}?</p>
      ${t.said.map(e=>n`<p class="why">${e}</p>`)}
      ${a.map(e=>n`<button class="named plain" @click=${()=>O.go(e.id)}>see ${T(e)}</button>`)}
      ${k(i,t.add)}
    </section>`}};i([s()],X.prototype,`asking`,void 0),i([s()],X.prototype,`told`,void 0),customElements.define(`desk-question`,X);var qt={dangerous:`dangerous, left open`,met:`left open`,slips:`slip`,ideas:`recurring idea`,stops:`early stop`,stale:`stale words`},Z={later:`put off`,dismissed:`dismissed`},Q=class extends t{constructor(){super(),this.here=!1,new D(this,O,[`lesson`,`study`,`cursor`,`findings`])}createRenderRoot(){return this}render(){let{study:e,lesson:t}=O;if(!t)return a;let r=e?.things.filter(({place:e})=>O.tree?.byId.has(e))??[],i=r.filter(({decided:e})=>e===null);if(this.here){let t=e?.pauses.filter(({place:e})=>e===O.cursor)??[];return n`${t.map(({grade:e,best:t,point:r})=>n`<p class="unread">A place to pause (grade ${e} of 5): find <span class="notation">${t}</span>; ${r}</p>`)}${$(null).filter(({place:e})=>e===O.cursor).map(e=>n`<details class="left-open"><summary>${qt.stale}: “${e.words}”</summary>${this.stale(e,null)}</details>`)}${i.filter(({place:e})=>e===O.cursor).map(e=>n`<details class="left-open"><summary>${qt[e.sort]}: ${e.words}</summary>${this.thing(e)}</details>`)}`}let o=r.filter(({decided:e})=>e!==null),[s,c]=[$(null),[...$(`later`),...$(`dismissed`)]];return n`<section class="todo">
      <h2>What the lesson leaves open</h2>
      ${s.length?n`<h3>Words that an edit has left behind</h3>
            ${s.map(e=>this.stale(e,null))}`:a}
      ${this.state()}
      ${Xt(i).map(([e,t])=>n`<h3>${e}</h3>
          ${t.map(e=>this.thing(e))}`)}
      ${o.length||c.length?n`<details><summary>${o.length+c.length} put off or dismissed</summary>
            ${c.map(e=>this.stale(e,Yt(e)))}${o.map(e=>this.thing(e))}</details>`:a}
    </section>`}state(){let{study:e,lesson:t}=O,r=e=>n`<button class="plain" @click=${()=>void O.beginStudy()}>${e}</button>`;if(t?.side===null)return n`<p class="lead">Say under “About this lesson” which side it teaches; then what the opponent will play can be looked for.</p>`;if(!e||e.state===`none`)return n`<p class="lead">Which replies will the audience meet that the lesson does not answer? Where is a natural move a
        mistake? Looking takes some minutes; go on writing meanwhile. ${r(`look for them`)}</p>`;if(e.state===`running`)return n`<p class="lead" role="status">Looking${e.of?`: ${e.done} of ${e.of} steps are done`:``}.</p>`;if(e.state===`failed`)return n`<p class="lead">${e.problem} ${r(`look again`)}</p>`;let i=t&&e.version<t.version;return n`<p class="lead">${e.things.length?a:`Nothing was found. `}${e.basis}
      ${i?n`The lesson has changed since. ${r(`look again`)}`:n`<button class="plain" @click=${()=>void O.report(`study`)}>save this as a report</button>`}</p>`}thing(e){let t={id:`${e.sort} ${e.place} ${e.about}`,place:e.place,evidence:e.evidence,marks:[]},r=O.tree?.byId.get(e.place),i=t=>void this.decide(e,t);return n`<article class="thing">
      ${this.here?a:n`<p class="words">${e.words}</p>`}
      <dl>${e.rows.map(({term:e,text:t})=>n`<div><dt>${e}</dt><dd>${t}</dd></div>`)}</dl>
      ${e.decided?n`<p class="unread">${Z[e.decided]}</p>`:a}
      ${k(t,e.add,!this.here)}
      <p class="doings">
        ${r&&!this.here?n`<button class="plain" @click=${()=>O.show(t)}>see ${T(r)}</button>`:a}
        ${e.decided===null?n`<button class="plain" @click=${()=>i(`later`)}>later</button>
              <button class="plain" @click=${()=>i(`dismissed`)}>dismiss</button>`:n`<button class="plain" @click=${()=>i(null)}>open it again</button>`}
      </p>
    </article>`}stale(e,t){let{words:r,why:i,instead:o,place:s}=e,c=O.tree?.byId.get(s),l=t=>void this.decide({sort:`stale`,place:s,about:Jt(e)},t);return n`<article class="thing">
      ${this.here?a:n`<p class="words">“${r}”</p>`}
      <p>${i}${o?n` ${o}`:a}</p>
      ${t?n`<p class="unread">${Z[t]}</p>`:a}
      <p class="doings">
        ${c&&!this.here?n`<button class="plain" @click=${()=>O.show(e)}>see ${T(c)}</button>`:a}
        ${t===null?n`<button class="plain" @click=${()=>l(`later`)}>later</button>
              <button class="plain" @click=${()=>l(`dismissed`)}>dismiss</button>`:n`<button class="plain" @click=${()=>l(null)}>open it again</button>`}
      </p>
    </article>`}async decide({sort:e,place:t,about:n},r){await O.change({op:`decide`,sort:e,place:t,about:n,decided:r},r===null?`It is open again.`:`It is ${Z[r]}.`)}};i([u({type:Boolean})],Q.prototype,`here`,void 0);function $(e){return O.findings.filter(t=>t.kind===`stale`&&[`fails`,`unsettled`].includes(t.outcome)&&Yt(t)===e)}var Jt=({words:e})=>e.slice(0,500);function Yt(e){return O.lesson?.stale_decided.find(t=>t.about===Jt(e)&&t.places.includes(e.place))?.decided??null}function Xt(e){let t=new Map;for(let n of e)t.set(n.title,[...t.get(n.title)??[],n]);return[...t]}customElements.define(`desk-todo`,Q);var Zt=class extends t{constructor(){super(),this.none=!1,this.measuring=null,new D(this,O,[`lesson`,`status`,`findings`]),this.addEventListener(`move-begun`,e=>this.figure()?.begin(e.detail)),this.addEventListener(`words-begun`,()=>this.manuscript()?.begin()),this.addEventListener(`back-to-page`,()=>this.manuscript()?.back()),window.addEventListener(`keydown`,e=>this.pressed(e)),window.addEventListener(`hashchange`,()=>void O.settled().then(()=>location.reload())),window.addEventListener(`beforeunload`,e=>{O.lesson&&!O.allSaved&&e.preventDefault()})}createRenderRoot(){return this}connectedCallback(){super.connectedCallback(),this.begin()}async begin(){try{let{lessons:e}=await b();if(ne){this.none=!0;return}let t=e.find(({key:e})=>e===te)??e[0];t?await O.open(t.key):this.none=!0}catch(e){O.failed(e)}}render(){let{lesson:e}=O;return n`<header class="masthead">
        <p class="imprint"><span class="small-caps">Lineproof, the desk</span>
          <span class="small-caps">${e?Qt(e):``}</span></p>
        ${e?n`<desk-map></desk-map>`:a}
      </header>
      <main>
        ${e?n`<div class="page">
                <h1>${e.title}</h1>
                <p class="counted">${$t()}</p>
                ${e.unwritable?n`<p class="unwritable" role="alert">${e.unwritable}</p>`:a}
                <desk-about></desk-about>
                <desk-others></desk-others>
                <desk-manuscript></desk-manuscript>
                <desk-todo></desk-todo>
                <desk-games></desk-games>
                <desk-hand-on></desk-hand-on>
              </div>
              <aside class="outer" aria-label="Board and findings">
                <desk-figure></desk-figure>
                <div class="margin">
                  <desk-question></desk-question>
                  <desk-note></desk-note>
                  <desk-sentences></desk-sentences>
                  <desk-todo here></desk-todo>
                  <desk-figures></desk-figures>
                  <desk-doings></desk-doings>
                </div>
              </aside>`:this.none?n`<desk-start></desk-start>`:n`<h1 class="waiting">${O.problem?`The lesson could not be opened`:`Opening the lesson`}</h1>`}
      </main>
      <footer class="status">
        <p role="status">${O.said}${this.joined()}</p>
        ${O.clash?this.clash(O.clash):a}
        ${e?.conflict?this.conflict(e.conflict):a}
        ${[O.problem,O.unstored].map(e=>e?n`<p class="problem" role="alert">${e}</p>`:a)}
        ${e?n`<desk-find></desk-find>`:a}
        <p class="saved">${en()}</p>
        ${e?n`<p class="steps">
              <button class="plain" ?disabled=${!e.undo} @click=${()=>void O.step(`undo`)}>undo</button>
              <button class="plain" ?disabled=${!e.redo} @click=${()=>void O.step(`redo`)}>do again</button>
            </p>`:a}
      </footer>`}updated(){let{lesson:e}=O;e&&(document.title=`${e.title} · the desk`);let t=this.querySelector(`.masthead`);t&&!this.measuring&&(this.measuring=new ResizeObserver(()=>{document.documentElement.style.setProperty(`--under-map`,`${t.getBoundingClientRect().height}px`)}),this.measuring.observe(t))}joined(){let e=O.joined===null?void 0:O.tree?.byId.get(O.joined);return e?n` <button class="plain" @click=${()=>O.go(e.id)}>see ${T(e)}</button>`:a}clash(e){return n`<div class="clash" role="alert">
      <p>These words were changed elsewhere while you wrote. You wrote: “${e.mine}” There stands now:
        ${e.theirs?`“${e.theirs}”`:`nothing`}.</p>
      <button class="plain" @click=${()=>void O.settle(!0)}>take mine</button>
      <button class="plain" @click=${()=>void O.settle(!1)}>leave what stands there</button>
    </div>`}conflict({ours:e,theirs:t}){return n`<div class="clash" role="alert">
      <p>Another program changed the file where you changed it, too. Here stands: “${e}” In the file: “${t}”</p>
      <button class="plain" @click=${()=>void O.keep(`ours`)}>keep what stands here</button>
      <button class="plain" @click=${()=>void O.keep(`theirs`)}>take what is in the file</button>
    </div>`}figure(){return this.querySelector(`desk-figure`)}manuscript(){return this.querySelector(`desk-manuscript`)}pressed(e){if(!(e.ctrlKey||e.metaKey)||e.altKey)return;let t=e.key.toLowerCase(),n=t===`z`?e.shiftKey?`redo`:`undo`:t===`y`?`redo`:null,r=e.target instanceof HTMLInputElement?e.target:null;if(!n||r?.value)return;e.preventDefault();let i=document.activeElement?.closest(`desk-words`);(async()=>{i&&await i.save(),await O.step(n)})()}};i([s()],Zt.prototype,`none`,void 0);function Qt(e){return`${e.side===null?``:`for ${e.side===`white`?`White`:`Black`}, `}players of about ${e.audience}`}function $t(){let{findings:e,proving:t}=O;if(!e.length)return t.complete?`No sentence here says anything that can be checked yet.`:`Reading the lesson.`;let r=t=>e.filter(e=>e.outcome===t).length,i=[[`holds`,`holds`,`hold`],[`fails`,`fails`,`fail`],[`unsettled`,`is unsettled`,`are unsettled`],[`waiting`,`is being checked`,`are being checked`]].filter(([e])=>r(e)).map(([e,t,i],a)=>{let o=r(e),s=`${o} ${o===1?t:i}`;return n`${a?`, `:``}${e===`fails`||e===`unsettled`?n`<button class="plain ${e}" title="Go to the next" @click=${()=>O.next(e)}>${s}</button>`:s}`});return n`${e.length} ${e.length===1?`claim`:`claims`}: ${i}.`}function en(){return O.offline?`The desk’s program does not answer. What you wrote waits here until it does.`:O.lesson?O.allSaved?`All is saved`:O.problem||O.unstored?`Not all is saved`:`Writing it down`:``}customElements.define(`desk-app`,Zt);