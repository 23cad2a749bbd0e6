// One source for a GPU (nvcc) and for a CPU (g++ -fopenmp): loops, sums and memory.
#pragma once
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <vector>

#ifdef __CUDACC__
#define HD __host__ __device__ __forceinline__
#define LAMBDA __host__ __device__
#define CHECK(call)                                                                        \
  do {                                                                                     \
    cudaError_t error_ = (call);                                                           \
    if (error_ != cudaSuccess) {                                                           \
      fprintf(stderr, "%s:%d %s\n", __FILE__, __LINE__, cudaGetErrorString(error_));       \
      exit(1);                                                                             \
    }                                                                                      \
  } while (0)

template <class Body> __global__ void __launch_bounds__(128, 4) eachKernel(int count, Body body) {
  const int at = blockIdx.x * blockDim.x + threadIdx.x;
  if (at < count) body(at);
}
template <int K, class Body> __global__ void sumKernel(int count, Body body, double* total) {
  __shared__ double part[K][256];
  double term[K] = {};
  for (int at = blockIdx.x * 256 + threadIdx.x; at < count; at += gridDim.x * 256) body(at, term);
  for (int k = 0; k < K; k++) part[k][threadIdx.x] = term[k];
  __syncthreads();
  for (int half = 128; half > 0; half /= 2) {
    if (threadIdx.x < half)
      for (int k = 0; k < K; k++) part[k][threadIdx.x] += part[k][threadIdx.x + half];
    __syncthreads();
  }
  if (threadIdx.x < K) atomicAdd(total + threadIdx.x, part[threadIdx.x][0]);
}
#else
#define HD inline
#define LAMBDA
#endif

/** body(i) for i in 0..count */
template <class Body> void each(int count, Body body) {
  if (count == 0) return;
#ifdef __CUDACC__
  eachKernel<<<(count + 127) / 128, 128>>>(count, body);
  CHECK(cudaGetLastError());
#else
#pragma omp parallel for schedule(static)
  for (int at = 0; at < count; at++) body(at);
#endif
}

/** body(i, term) adds to K terms; their sums are added to `total`, which lies with the fields. */
template <int K, class Body> void sumInto(int count, Body body, double* total) {
#ifdef __CUDACC__
  sumKernel<K><<<std::min(1056, (count + 255) / 256), 256>>>(count, body, total);
  CHECK(cudaGetLastError());
#else
#pragma omp parallel
  {
    double term[K] = {};
#pragma omp for schedule(static) nowait
    for (int at = 0; at < count; at++) body(at, term);
#pragma omp critical
    for (int k = 0; k < K; k++) total[k] += term[k];
  }
#endif
}

HD void addOne(int* counter) {
#ifdef __CUDA_ARCH__
  atomicAdd(counter, 1);
#else
#pragma omp atomic
  (*counter)++;
#endif
}

template <class T> T* room(size_t count) {
#ifdef __CUDACC__
  T* p;
  CHECK(cudaMalloc(&p, std::max<size_t>(1, count) * sizeof(T)));
  CHECK(cudaMemset(p, 0, std::max<size_t>(1, count) * sizeof(T)));
  return p;
#else
  return (T*)calloc(std::max<size_t>(1, count), sizeof(T));
#endif
}
template <class T> void put(T* to, const T* from, size_t count) {
#ifdef __CUDACC__
  CHECK(cudaMemcpy(to, from, count * sizeof(T), cudaMemcpyHostToDevice));
#else
  memcpy(to, from, count * sizeof(T));
#endif
}
template <class T> T* put(const std::vector<T>& from) {
  T* to = room<T>(from.size());
  put(to, from.data(), from.size());
  return to;
}
template <class T> void get(T* to, const T* from, size_t count) {
#ifdef __CUDACC__
  CHECK(cudaMemcpy(to, from, count * sizeof(T), cudaMemcpyDeviceToHost));
#else
  memcpy(to, from, count * sizeof(T));
#endif
}
