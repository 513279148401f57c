const VERTEX = `attribute vec3 place; attribute vec3 direction; attribute vec4 colour;
uniform mat4 camera; uniform vec3 light; varying vec4 shade;
void main() {
  gl_Position = camera * vec4(place, 1.0);
  float lit = 0.62 + 0.38 * dot(normalize(direction), light);
  shade = vec4(colour.rgb * lit + 0.05, 1.0) * colour.a;
}`;
const FRAGMENT = "precision mediump float; varying vec4 shade; void main() { gl_FragColor = shade; }";

// Painter paints corners with WebGL. All views of a page share one, since
// browsers allow few contexts.
class Painter {
  static #one;

  // shared returns the painter, or null if the browser has no WebGL.
  static shared() {
    if (Painter.#one === undefined) {
      const canvas = document.createElement("canvas");
      const gl = canvas.getContext("webgl", { antialias: true, premultipliedAlpha: true, preserveDrawingBuffer: true });
      Painter.#one = gl && new Painter(canvas, gl);
      canvas.addEventListener("webglcontextlost", () => (Painter.#one = undefined));
    }
    return Painter.#one;
  }

  constructor(canvas, gl) {
    Object.assign(this, { canvas, gl, program: gl.createProgram(), buffer: gl.createBuffer() });
    for (const [type, text] of [[gl.VERTEX_SHADER, VERTEX], [gl.FRAGMENT_SHADER, FRAGMENT]]) {
      const shader = gl.createShader(type);
      gl.shaderSource(shader, text);
      gl.compileShader(shader);
      gl.attachShader(this.program, shader);
    }
    gl.linkProgram(this.program);
    gl.useProgram(this.program);
    gl.bindBuffer(gl.ARRAY_BUFFER, this.buffer);
    for (const [name, size, offset] of [["place", 3, 0], ["direction", 3, 3], ["colour", 4, 6]]) {
      const at = gl.getAttribLocation(this.program, name);
      gl.enableVertexAttribArray(at);
      gl.vertexAttribPointer(at, size, gl.FLOAT, false, STRIDE * 4, offset * 4);
    }
    gl.enable(gl.DEPTH_TEST);
    gl.enable(gl.POLYGON_OFFSET_FILL); // so that lines lie on top of their faces
    gl.polygonOffset(1, 2);
    gl.blendFunc(gl.ONE, gl.ONE_MINUS_SRC_ALPHA);
  }

  // paint paints the lists as seen from turn and tilt, in degrees, onto a
  // canvas of the page; with words, also which way the contents measure what.
  paint(lists, turn, tilt, target, words) {
    const { gl, canvas } = this;
    const seen = camera(corners(lists), turn, tilt, target.width / target.height);
    Object.assign(canvas, { width: target.width, height: target.height });
    gl.viewport(0, 0, target.width, target.height);
    gl.clearColor(0, 0, 0, 0);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
    gl.uniformMatrix4fv(gl.getUniformLocation(this.program, "camera"), false, seen);
    gl.uniform3f(gl.getUniformLocation(this.program, "light"), -0.35, -0.5, 0.79);
    for (const kind of [0, 2, 1]) { // what is translucent last
      gl[kind === 1 ? "enable" : "disable"](gl.BLEND);
      gl.depthMask(kind !== 1);
      gl.bufferData(gl.ARRAY_BUFFER, lists[kind], gl.DYNAMIC_DRAW);
      gl.drawArrays(kind === 2 ? gl.LINES : gl.TRIANGLES, 0, lists[kind].length / STRIDE);
    }
    gl.depthMask(true);
    const context = target.getContext("2d");
    context.clearRect(0, 0, target.width, target.height);
    context.drawImage(canvas, 0, 0);
    if (words) measured(lists.sizes, seen, context, words);
  }
}

const OFF = 16; // pixels from an edge to the arrow that tells what it measures
const HEAD = 9;

// measured draws an arrow beside the outermost edge along each size of the contents.
function measured(sizes, seen, context, words) {
  const { width, height } = context.canvas;
  const flat = ([x, y, z]) => {
    const [a, b, , w] = [0, 1, 2, 3].map((row) => seen[row] * x + seen[4 + row] * y + seen[8 + row] * z + seen[12 + row]);
    return [(a / w + 1) * width / 2, (1 - b / w) * height / 2];
  };
  const edges = sizes.map(({ axis, ends }) => ({ axis, ends: ends.map(flat) })).map((edge) => ({ ...edge, middle: [0, 1].map((k) => (edge.ends[0][k] + edge.ends[1][k]) / 2) }));
  const centre = [0, 1].map((k) => edges.reduce((sum, { middle }) => sum + middle[k], 0) / edges.length);
  Object.assign(context, { font: "bold 20px sans-serif", textAlign: "center", textBaseline: "middle", lineWidth: 2, lineJoin: "round" });
  context.fillStyle = context.strokeStyle = getComputedStyle(context.canvas).color;
  for (const axis of new Set(edges.map((edge) => edge.axis))) {
    const far = ({ middle }) => Math.hypot(middle[0] - centre[0], middle[1] - centre[1]) + middle[1] / 4; // rather below than above
    const { ends, middle } = edges.filter((edge) => edge.axis === axis).reduce((best, edge) => (far(edge) > far(best) ? edge : best));
    arrow(context, ends, middle, centre, words[axis]);
  }
}

// arrow draws an arrow with two heads outside of an edge, and a word beside it.
function arrow(context, [from, to], middle, centre, word) {
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (long < 3 * HEAD) return; // seen from its end
  const along = [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
  let out = [-along[1], along[0]];
  if (out[0] * (middle[0] - centre[0]) + out[1] * (middle[1] - centre[1]) < 0) out = out.map((d) => -d);
  const at = (p, forwards, outwards) => p.map((d, k) => d + along[k] * forwards + out[k] * outwards);
  context.beginPath();
  for (const points of [[at(from, 0, OFF), at(to, 0, OFF)], [at(from, HEAD, OFF - 5), at(from, 0, OFF), at(from, HEAD, OFF + 5)], [at(to, -HEAD, OFF - 5), at(to, 0, OFF), at(to, -HEAD, OFF + 5)]]) {
    points.forEach((p, i) => context[i ? "lineTo" : "moveTo"](...p));
  }
  context.stroke();
  const half = context.measureText(word).width / 2;
  const [x, y] = at(middle, 0, OFF + 8 + Math.abs(out[0]) * half + Math.abs(out[1]) * 10);
  context.fillText(word, Math.max(half, Math.min(context.canvas.width - half, x)), y); // never beyond the edge of the picture
}

// camera returns the matrix that looks at the box from outside, z upwards, from
// as near as shows all of it, column by column.
function camera(box, turn, tilt, aspect) {
  const [a, b] = [turn, tilt].map((degrees) => (degrees * Math.PI) / 180);
  const right = [Math.cos(a), Math.sin(a), 0];
  const back = [Math.sin(a) * Math.cos(b), -Math.cos(a) * Math.cos(b), Math.sin(b)];
  const up = [-Math.sin(a) * Math.sin(b), Math.cos(a) * Math.sin(b), Math.cos(b)];
  const middle = box[0].map((value, k) => (value + box[7][k]) / 2);
  const along = (v, p) => v[0] * p[0] + v[1] * p[1] + v[2] * p[2];
  const dot = (v) => along(v, middle);
  const off = box.map((corner) => [right, up, back].map((v) => along(v, corner) - dot(v)));
  const radius = Math.max(...off.map((p) => Math.hypot(...p))) || 1;
  const focus = 3.2;
  const distance = 1.12 * Math.max(...off.map(([x, y, z]) => Math.max((Math.abs(x) * focus) / aspect, Math.abs(y) * focus) + z));
  const [near, far] = [Math.max(distance - radius * 1.1, radius / 50), distance + radius * 1.1];
  const depth = (near + far) / (near - far);
  const rows = [
    [...right.map((v) => (v * focus) / aspect), (-dot(right) * focus) / aspect],
    [...up.map((v) => v * focus), -dot(up) * focus],
    [...back.map((v) => v * depth), (-dot(back) - distance) * depth + (2 * near * far) / (near - far)],
    [...back.map((v) => -v), dot(back) + distance],
  ];
  return new Float32Array([0, 1, 2, 3].flatMap((column) => rows.map((row) => row[column])));
}
