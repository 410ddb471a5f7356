import { onnx } from 'onnx-proto';

/** Small networks, node by node, in the format of ONNX. */
export const { FLOAT, INT64, BOOL } = onnx.TensorProto.DataType;
export const { INTS } = onnx.AttributeProto.AttributeType;

export const tensor = (
  name: string,
  elemType: number,
  dims: readonly (number | string)[],
): onnx.IValueInfoProto => ({
  name,
  type: {
    tensorType: {
      elemType,
      shape: { dim: dims.map((dim) => (typeof dim === 'number' ? { dimValue: dim } : { dimParam: dim })) },
    },
  },
});

export const floats = (name: string, dims: number[], floatData: number[]): onnx.ITensorProto => ({
  name,
  dataType: FLOAT,
  dims,
  floatData,
});

export const node = (
  opType: string,
  input: string[],
  output: string,
  attribute: onnx.IAttributeProto[] = [],
): onnx.INodeProto => ({ opType, input, output: [output], attribute });

interface Graph {
  inputs: onnx.IValueInfoProto[];
  outputs: onnx.IValueInfoProto[];
  constants: onnx.ITensorProto[];
  nodes: onnx.INodeProto[];
}

export const graph = ({ inputs, outputs, constants, nodes }: Graph): Uint8Array =>
  onnx.ModelProto.encode({
    irVersion: 8,
    opsetImport: [{ domain: '', version: 14 }],
    graph: { name: 'by-heart', input: inputs, output: outputs, initializer: constants, node: nodes },
  }).finish();
