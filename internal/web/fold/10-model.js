const STRIDE = 10; // floats of a corner: place, direction, colour
const LINES = 1; // mode of a primitive
const STILL = { translation: [0, 0, 0], rotation: [0, 0, 0, 1], scale: [1, 1, 1] };

// cross, turned and hung work with stances: a place and a rotation (a quaternion),
// and a scale that is 1 or, for what is not there, 0.
const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const turned = (q, v) => {
  const t = cross(q, v).map((d) => 2 * d);
  const u = cross(q, t);
  return v.map((d, k) => d + q[3] * t[k] + u[k]);
};
const hung = (on, at) => {
  const [a, b] = [on.rotation, at.rotation];
  const [x, y, z] = cross(a, b);
  return {
    translation: turned(on.rotation, at.translation).map((d, k) => d + on.translation[k]),
    rotation: [x + a[3] * b[0] + b[3] * a[0], y + a[3] * b[1] + b[3] * a[1], z + a[3] * b[2] + b[3] * a[2], a[3] * b[3] - a[0] * b[0] - a[1] * b[1] - a[2] * b[2]],
    scale: on.scale[0] && at.scale[0] ? STILL.scale : [0, 0, 0],
  };
};

// between mixes two values of a path as the format says.
function between(path, a, b, part) {
  if (path !== "rotation") return a.map((d, k) => d + (b[k] - d) * part);
  const cos = Math.min(1, Math.max(-1, a.reduce((sum, d, k) => sum + d * b[k], 0)));
  const half = Math.acos(Math.abs(cos));
  const [from, to] = half < 1e-6 ? [1 - part, part] : [Math.sin((1 - part) * half) / Math.sin(half), Math.sin(part * half) / Math.sin(half)];
  return a.map((d, k) => d * from + b[k] * to * (cos < 0 ? -1 : 1));
}

// Model is the making of one request, fetched once: a binary glTF file of the
// service, whose first animation is the whole of the work.
class Model {
  #file;

  constructor(address, body) {
    this.address = address;
    this.body = body;
  }

  #fetched() {
    const url = this.address + (this.address.includes("?") ? "&" : "?") + "format=glb";
    const posted = this.body ? { method: "POST", headers: { "Content-Type": "application/json" }, body: this.body } : {};
    this.#file ??= fetch(url, { credentials: "omit", ...posted }).then((answer) => {
      if (!answer.ok) throw new Error("HTTP " + answer.status);
      return answer.arrayBuffer();
    }).then((buffer) => new Making(buffer)).catch((error) => {
      this.#file = undefined;
      throw error;
    });
    return this.#file;
  }

  // at returns the corners when so much of the work is done, 0 to 1, and sizes.
  async at(part) {
    return (await this.#fetched()).at(part);
  }

  // long returns how many seconds the work plays.
  async long() {
    return (await this.#fetched()).long;
  }
}

// Making is a file that was read.
class Making {
  constructor(buffer) {
    const size = new DataView(buffer).getUint32(12, true);
    this.file = JSON.parse(new TextDecoder().decode(new Uint8Array(buffer, 20, size)));
    this.read = (index, Type = Float32Array) => {
      const accessor = this.file.accessors[index];
      const at = 28 + size + (this.file.bufferViews[accessor.bufferView].byteOffset ?? 0) + (accessor.byteOffset ?? 0);
      return new Type(buffer.slice(at, at + accessor.count * { SCALAR: 1, VEC3: 3, VEC4: 4 }[accessor.type] * 4));
    };
    this.tracks = (this.file.animations?.[0].channels ?? []).map(({ sampler, target }) => {
      const { input, output, interpolation } = this.file.animations[0].samplers[sampler];
      return { ...target, step: interpolation === "STEP", times: this.read(input), values: this.read(output) };
    });
    this.long = Math.max(0, ...this.tracks.map((track) => track.times.at(-1)));
    this.bodies = this.file.nodes.flatMap((node, i) => (this.file.meshes[node.mesh]?.primitives ?? []).map((primitive) => this.#body(i, primitive)));
    this.counts = [0, 1, 2].map((list) => this.bodies.reduce((sum, body) => sum + (body.list === list ? body.places.length / 3 : 0), 0));
  }

  // #body reads a primitive, corner by corner.
  #body(node, { attributes, indices, material, mode }) {
    const { alphaMode, pbrMetallicRoughness } = this.file.materials[material];
    const [places, directions] = [this.read(attributes.POSITION), attributes.NORMAL === undefined ? null : this.read(attributes.NORMAL)];
    const corners = indices === undefined ? Uint32Array.from({ length: places.length / 3 }, (_, i) => i) : this.read(indices, Uint32Array);
    const spread = (values) => Float32Array.from({ length: 3 * corners.length }, (_, i) => values[3 * corners[Math.floor(i / 3)] + (i % 3)]);
    return {
      node, list: mode === LINES ? 2 : alphaMode === "BLEND" ? 1 : 0, colour: pbrMetallicRoughness.baseColorFactor,
      places: spread(places), directions: directions && spread(directions),
    };
  }

  // at returns the corners of [opaque triangles, translucent ones, lines], each a
  // Float32Array, z upwards and in millimetres; with them as sizes, the twelve edges of
  // contents that are a box: what lies along them, and their ends.
  at(part) {
    const stances = this.#stances(part * this.long);
    const lists = this.counts.map((count) => new Float32Array(count * STRIDE));
    const ends = [0, 0, 0];
    for (const { node, list, colour, places, directions } of this.bodies) {
      const stance = stances[node];
      if (!stance.scale[0]) continue;
      for (let i = 0; i < places.length; i += 3) {
        const place = turned(stance.rotation, [places[i], places[i + 1], places[i + 2]]);
        lists[list].set(place.map((d, k) => d + stance.translation[k]), ends[list]);
        lists[list].set(directions ? turned(stance.rotation, [directions[i], directions[i + 1], directions[i + 2]]) : [0, 0, 1], ends[list] + 3);
        lists[list].set(colour, ends[list] + 6);
        ends[list] += STRIDE;
      }
    }
    return Object.assign(lists.map((list, k) => list.subarray(0, ends[k])), { sizes: this.#sizes(stances) });
  }

  #sizes(stances) {
    const node = this.file.nodes.findIndex((node) => node.extras?.axes);
    if (node < 0 || !stances[node].scale[0]) return [];
    const { places } = this.bodies.find((body) => body.node === node);
    const most = [0, 1, 2].map((k) => Math.max(...places.filter((_, i) => i % 3 === k)));
    const corner = (i) => turned(stances[node].rotation, most.map((d, k) => (i & (1 << k) ? d : 0))).map((d, k) => d + stances[node].translation[k]);
    return this.file.nodes[node].extras.axes.flatMap((axis, k) => [0, 1, 2, 3, 4, 5, 6, 7].filter((i) => !(i & (1 << k))).map((i) => ({ axis, ends: [corner(i), corner(i | (1 << k))] })));
  }

  // #stances returns where every node is at a time, without the first, which only
  // changes units and axes.
  #stances(time) {
    const own = this.file.nodes.map((node) => ({ ...STILL, translation: node.translation ?? STILL.translation, rotation: node.rotation ?? STILL.rotation, scale: node.scale ?? STILL.scale }));
    for (const { node, path, step, times, values } of this.tracks) {
      const wide = values.length / times.length;
      const next = times.findIndex((at) => at > time);
      const [low, high] = next < 0 ? [times.length - 1, times.length - 1] : [Math.max(next - 1, 0), next];
      const value = (k) => Array.from(values.subarray(k * wide, (k + 1) * wide));
      const part = high > low ? Math.max(0, (time - times[low]) / (times[high] - times[low])) : 0;
      own[node][path] = step || !part ? value(low) : between(path, value(low), value(high), part);
    }
    own[0] = STILL;
    const stances = [];
    const hang = (node, on) => {
      stances[node] = hung(on, own[node]);
      for (const child of this.file.nodes[node].children ?? []) hang(child, stances[node]);
    };
    hang(0, STILL);
    return stances;
  }
}

// corners returns the eight corners of the box round all places, opposite ones
// first and last.
function corners(lists) {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (const list of lists) {
    for (let at = 0; at < list.length; at += STRIDE) {
      for (let k = 0; k < 3; k++) {
        low[k] = Math.min(low[k], list[at + k]);
        high[k] = Math.max(high[k], list[at + k]);
      }
    }
  }
  return [0, 1, 2, 3, 4, 5, 6, 7].map((i) => low.map((v, k) => (i & (1 << k) ? high[k] : v)));
}
